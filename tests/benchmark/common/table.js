// The table that the benchmark prints, row by row as the figures come.
const digits = (value) =>
  value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2);

export function heading(text) {
  console.log(`\n${text}`);
}

/** One row: what, how much, and the figure to reach where the project has set itself one. */
export function row(what, value, unit, { least, most, note = '' } = {}) {
  const reached = least === undefined ? value <= most : value >= least;
  const goal =
    least !== undefined || most !== undefined
      ? `${least !== undefined ? 'at least' : 'at most'} ${least ?? most}: ${reached ? 'reached' : 'MISSED'}`
      : '';
  const line = `  ${what.padEnd(56)}${digits(value).padStart(8)} ${unit.padEnd(16)}${goal.padEnd(24)}${note}`;
  console.log(line.trimEnd());
}

export function remark(text) {
  console.log(`  ${text}`);
}
