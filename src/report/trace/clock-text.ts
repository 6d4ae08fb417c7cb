/** To the millisecond, as a playback holds moments: what is told of a run is the same wherever it is told. */
export const toMillisecond = (seconds: number): number => Math.round(1000 * seconds) / 1000;

/** A moment of a run as hours, minutes and seconds since its start: `0:00:07`, `26:30:00`. */
export function clockText(seconds: number): string {
  const whole = Math.round(toMillisecond(seconds));
  const two = (value: number) => String(value).padStart(2, '0');
  return `${Math.floor(whole / 3600)}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}
