// Moves through the typing grid with the keyboard alone: Enter and the down arrow to the next athlete, the up arrow back,
// Alt with left or right to the neighbouring set, and Tab as everywhere.
const neighbour = (cell, row, column) => cell.closest('table').querySelector(`input[data-grid-row="${row}"][data-grid-column="${column}"]`);

document.addEventListener('keydown', event => {
  const cell = event.target;
  if (!(cell instanceof HTMLInputElement) || cell.dataset.gridRow === undefined) return;
  let row = Number(cell.dataset.gridRow), column = Number(cell.dataset.gridColumn);
  if (event.key === 'Enter' || event.key === 'ArrowDown') row++;
  else if (event.key === 'ArrowUp') row--;
  else if (event.altKey && event.key === 'ArrowLeft') column--;
  else if (event.altKey && event.key === 'ArrowRight') column++;
  else return;
  const next = neighbour(cell, row, column) ?? (event.key === 'Enter' ? neighbour(cell, 0, column + 1) : null);
  if (!next) return;
  event.preventDefault();
  next.focus();
  next.select();
});

// A column or a block of times goes into the cells from here on, all of it or nothing.
document.addEventListener('paste', event => {
  const cell = event.target;
  if (!(cell instanceof HTMLInputElement) || !cell.matches('.typing input')) return;
  const lines = event.clipboardData.getData('text').replace(/\r/g, '').replace(/\n+$/, '').split('\n').map(line => line.split('\t'));
  const times = lines.flatMap((line, down) => line.map((text, right) => ({ text: text.trim(), into: neighbour(cell, Number(cell.dataset.gridRow) + down, Number(cell.dataset.gridColumn) + right) })));
  if (times.length === 1) return;
  event.preventDefault();
  if (times.some(time => !time.into)) {
    cell.setCustomValidity(`${times.length} times do not fit from here on. Nothing was put in.`);
    cell.reportValidity();
    cell.addEventListener('input', () => cell.setCustomValidity(''), { once: true });
    return;
  }
  for (const { text, into } of times) {
    into.value = text;
    for (const kind of ['input', 'change']) into.dispatchEvent(new Event(kind, { bubbles: true }));
  }
});
