/** A time in the unit that reads best: `12 s`, `8.5 min`, `5 h`. */
export function durationText(seconds: number): string {
  const [unit, size] = seconds >= 3600 ? ['h', 3600] : seconds >= 120 ? ['min', 60] : ['s', 1];
  return `${Number((seconds / (size as number)).toPrecision(3))} ${unit}`;
}
