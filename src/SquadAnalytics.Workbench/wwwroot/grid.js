// Moves through the typing grid with the keyboard alone: Enter and the down arrow to the next athlete, the up arrow back,
// Alt with left or right to the neighbouring set, and Tab as everywhere.
document.addEventListener('keydown', event => {
  const cell = event.target;
  if (!(cell instanceof HTMLInputElement) || cell.dataset.gridRow === undefined) return;
  let row = Number(cell.dataset.gridRow), column = Number(cell.dataset.gridColumn);
  if (event.key === 'Enter' || event.key === 'ArrowDown') row++;
  else if (event.key === 'ArrowUp') row--;
  else if (event.altKey && event.key === 'ArrowLeft') column--;
  else if (event.altKey && event.key === 'ArrowRight') column++;
  else return;
  const grid = cell.closest('table');
  const next = grid.querySelector(`input[data-grid-row="${row}"][data-grid-column="${column}"]`)
    ?? (event.key === 'Enter' ? grid.querySelector(`input[data-grid-row="0"][data-grid-column="${column + 1}"]`) : null);
  if (!next) return;
  event.preventDefault();
  next.focus();
  next.select();
});
