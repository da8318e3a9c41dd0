// The page of a notebook's cells: one code editor at a time, moving between cells with the keyboard, and frames as tall as what they show.
const place = new URL('_content/BlazorMonaco/lib/monaco-editor/min/vs', document.baseURI).href;
const dark = matchMedia('(prefers-color-scheme: dark)');
const languages = ['csharp', 'sql'];
const kinds = { Class: 5, Struct: 6, Interface: 7, Module: 8, Namespace: 8, Property: 9, Event: 10, Operator: 11, Enum: 15, EnumMember: 16, Constant: 14, Keyword: 17, Field: 3, Local: 4, Parameter: 4, Variable: 4, Method: 0, ExtensionMethod: 0, Function: 1, Table: 5, Column: 3 };
let loading, current;

function script(source) {
  return new Promise((done, failed) => {
    const element = document.createElement('script');
    element.src = source;
    element.onload = done;
    element.onerror = () => failed(new Error(`${source} could not be loaded`));
    document.head.append(element);
  });
}

function monaco() {
  loading ??= script(`${place}/loader.js`).then(() => new Promise((done, failed) => {
    window.require.config({ paths: { vs: place } });
    window.require(['vs/editor/editor.main'], () => { prepare(window.monaco); done(window.monaco); }, failed);
  }));
  return loading;
}

function prepare(monaco) {
  const define = (name, base, ground, ink, chosen, soft, keyword, string, number) => monaco.editor.defineTheme(name, {
    base, inherit: true, colors: {
      'editor.background': ground, 'editorLineNumber.foreground': `#${soft}`, 'editorSuggestWidget.background': ground, 'editorSuggestWidget.foreground': ink, 'editorSuggestWidget.selectedForeground': ink,
      'editorSuggestWidget.selectedBackground': chosen, 'editorSuggestWidget.highlightForeground': `#${keyword}`, 'editorSuggestWidget.focusHighlightForeground': `#${keyword}`, 'editorSuggestWidget.selectedIconForeground': ink,
    },
    rules: [{ token: 'keyword', foreground: keyword }, { token: 'comment', foreground: soft }, { token: 'string', foreground: string }, { token: 'number', foreground: number }],
  });
  define('quiet-light', 'vs', '#ffffff', '#1b1d20', '#e3eef5', '565b63', '005d93', '8a3a00', '00664a');
  define('quiet-dark', 'vs-dark', '#1f2226', '#ececea', '#1d3343', 'abb0b8', '7cc0ec', 'f5a571', '5fd6b5');
  const theme = () => monaco.editor.setTheme(dark.matches ? 'quiet-dark' : 'quiet-light');
  dark.addEventListener('change', theme);
  theme();
  for (const language of languages) {
    monaco.languages.registerCompletionItemProvider(language, {
      triggerCharacters: ['.'],
      async provideCompletionItems(model, position, context, token) {
        // Whoever writes on quickly is asked about once.
        await new Promise(done => setTimeout(done, 80));
        if (current?.model !== model || token.isCancellationRequested) return { suggestions: [] };
        const answer = await current.page.invokeMethodAsync('Complete', model.getValue(), position.lineNumber, position.column);
        const word = model.getWordUntilPosition(position);
        const range = new monaco.Range(position.lineNumber, word.startColumn, position.lineNumber, word.endColumn);
        // The space keeps name and kind two words for whoever hears them.
        return {
          incomplete: answer.hasMore,
          suggestions: answer.completions.map(choice => ({ label: { label: choice.name, description: ` ${choice.kind}` }, kind: kinds[choice.kind] ?? 18, insertText: choice.text, range })),
        };
      },
      // What the library says of a choice is what it would say where the choice is written.
      async resolveCompletionItem(item) {
        if (!current) return item;
        const { startLineNumber: line, startColumn: column } = item.range;
        const lines = current.model.getValue().split('\n');
        lines[line - 1] = lines[line - 1].slice(0, column - 1) + item.insertText + lines[line - 1].slice(item.range.endColumn - 1);
        const text = await current.page.invokeMethodAsync('Explain', lines.join('\n'), line, column);
        return text ? { ...item, documentation: { value: text } } : item;
      },
    });
    monaco.languages.registerHoverProvider(language, {
      async provideHover(model, position) {
        if (current?.model !== model) return null;
        const text = await current.page.invokeMethodAsync('Explain', model.getValue(), position.lineNumber, position.column);
        return text ? { contents: [{ value: text }] } : null;
      },
    });
  }
}

// Where the focus lies the editor says rightly which choice is meant; on the list itself it names a row that is not there.
const lists = new MutationObserver(changes => changes.filter(change => change.target.matches('.suggest-widget .monaco-list')).forEach(change => change.target.removeAttribute('aria-activedescendant')));

// Puts the editor into an element; what is typed is sent on when a short pause comes.
export async function edit(id, language, text, label, page) {
  const lib = await monaco();
  close();
  const host = document.getElementById(id);
  if (!host) return;
  const model = lib.editor.createModel(text, language);
  const style = getComputedStyle(document.documentElement);
  const editor = lib.editor.create(host, {
    model, ariaLabel: label, automaticLayout: true, minimap: { enabled: false }, scrollBeyondLastLine: false, contextmenu: false, fixedOverflowWidgets: true,
    lineNumbersMinChars: 3, glyphMargin: false, folding: false, renderLineHighlight: 'none', overviewRulerLanes: 0, padding: { top: 8, bottom: 8 },
    fontFamily: style.getPropertyValue('--mono'), fontSize: 14, lineHeight: 21, scrollbar: { alwaysConsumeMouseWheel: false, vertical: 'auto' }, accessibilitySupport: 'on', tabSize: 4,
    quickSuggestionsDelay: 100, wordBasedSuggestions: false,
  });
  lists.observe(host, { subtree: true, attributeFilter: ['aria-activedescendant'] });
  current = { model, editor, page, host, pause: 0 };
  const fit = () => { host.style.height = `${Math.min(Math.max(editor.getContentHeight() + 2, 60), innerHeight * 0.7)}px`; editor.layout(); };
  editor.onDidContentSizeChange(fit);
  fit();
  model.onDidChangeContent(() => {
    clearTimeout(current.pause);
    current.pause = setTimeout(send, 300);
  });
  // The editor's live regions are landmarks to some; each needs a name.
  [...document.querySelectorAll('.monaco-aria-container > *')].forEach((status, number) => status.setAttribute('aria-label', `Editor message ${number + 1}`));
  if (model.getLineCount() <= 2) editor.setPosition(model.getFullModelRange().getEndPosition());
  editor.focus();
  send();
}

function send() {
  if (current) current.page.invokeMethodAsync('Typed', current.model.getValue());
}

export function value() {
  if (current) clearTimeout(current.pause);
  return current ? current.model.getValue() : null;
}

export function mark(problems) {
  if (!current) return;
  window.monaco.editor.setModelMarkers(current.model, 'cell', problems.map(problem => ({
    severity: problem.isError ? 8 : 4, message: problem.message, code: problem.code,
    startLineNumber: problem.start.line, startColumn: problem.start.column, endLineNumber: problem.end.line, endColumn: problem.end.column,
  })));
}

export function close() {
  if (!current) return;
  clearTimeout(current.pause);
  current.editor.dispose();
  current.model.dispose();
  current = undefined;
}

export function focusOn(id) {
  const element = document.getElementById(id);
  element?.focus();
  element?.scrollIntoView({ block: 'nearest' });
}

// In the editor Escape closes what is open there first, and leaves it with nothing open.
const isOpen = () => document.querySelector('.suggest-widget.visible, .find-widget.visible, .monaco-hover:not(.hidden) .hover-contents, .parameter-hints-widget.visible') !== null;
const press = (cell, command) => cell.querySelector(`[data-command="${command}"]`)?.click();

document.addEventListener('keydown', event => {
  const cell = event.target.closest?.('[data-cell]');
  if (!cell) return;
  const writing = event.target.closest('.editor-host, textarea, input, select, button, a') !== null;
  const keys = `${event.ctrlKey || event.metaKey ? 'Ctrl+' : ''}${event.altKey ? 'Alt+' : ''}${event.shiftKey ? 'Shift+' : ''}${event.key}`;
  if (keys === 'Ctrl+Enter') press(cell, 'run');
  else if (keys === 'Shift+Enter') press(cell, 'run-on');
  else if (keys === 'Escape' && event.target.closest('.editor-host, textarea')) { if (isOpen()) return; press(cell, 'leave'); }
  else if (writing) return;
  else if (keys === 'Enter') press(cell, 'edit');
  else if (keys === 'Delete') press(cell, 'delete');
  else if (keys === 'Alt+ArrowUp') press(cell, 'up');
  else if (keys === 'Alt+ArrowDown') press(cell, 'down');
  else if (keys === 'Ctrl+z') document.querySelector('[data-command="undo"]')?.click();
  else if (keys === 'Ctrl+y' || keys === 'Ctrl+Shift+Z') document.querySelector('[data-command="redo"]')?.click();
  else if (keys === 'ArrowUp' || keys === 'ArrowDown') {
    const cells = [...document.querySelectorAll('[data-cell]')];
    const next = cells[cells.indexOf(cell) + (keys === 'ArrowDown' ? 1 : -1)];
    if (!next) return;
    next.focus();
  }
  else return;
  event.preventDefault();
  event.stopPropagation();
}, true);

document.addEventListener('keydown', event => {
  if ((event.ctrlKey || event.metaKey) && event.key === 's' && document.querySelector('[data-command="save"]')) {
    event.preventDefault();
    document.querySelector('[data-command="save"]').click();
  }
});

// Prose may point outside: such a page opens beside the workbench, not in its place.
document.addEventListener('click', event => {
  const link = event.target.closest?.('.prose a[href^="http"]');
  if (!link) return;
  event.preventDefault();
  window.open(link.href, '_blank', 'noopener,noreferrer');
});

const measure = frame => { if (frame.contentDocument?.documentElement) frame.style.height = `${Math.ceil(frame.contentDocument.documentElement.scrollHeight)}px`; };
document.addEventListener('load', event => {
  if (!(event.target instanceof HTMLIFrameElement) || !event.target.matches('.shown')) return;
  const frame = event.target;
  measure(frame);
  frame.contentDocument?.fonts?.ready.then(() => measure(frame));
}, true);
addEventListener('resize', () => document.querySelectorAll('iframe.shown').forEach(frame => { frame.style.height = '0'; measure(frame); }));
