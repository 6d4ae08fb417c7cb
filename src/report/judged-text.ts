import type { Judged } from '../experiment/paired.ts';
import { listedNames } from './words.ts';

/** Rounded up to two digits: it is no more than a guess by the spread so far. */
function about(runs: number): string {
  const unit = 10 ** Math.max(0, Math.floor(Math.log10(runs)) - 1);
  return `about ${Math.ceil(runs / unit) * unit}`;
}

/** How many runs would decide it, or why that cannot be told; empty where it is decided. */
export function moreText({ verdict, more }: Judged, worth: number): string {
  if (verdict !== 'undecided') return '';
  if (more !== null) return `run ${about(more)} more`;
  const why =
    worth > 0 ? 'the difference seems just what is worth having' : 'the runs show no difference at all';
  return `how many more cannot be told, as ${why}`;
}

/** On which side of zero the difference surely lies, where the verdict does not say it; else empty. */
export function surelyText({ verdict, surely }: Judged): string {
  if (surely === null || surely === verdict) return '';
  return `surely ${surely}, but ${verdict === 'undecided' ? 'not surely by enough' : 'by too little'}`;
}

/** Whether every run gave what the other policy gave under the same seed. */
export function unchanged({ difference }: Judged): boolean {
  return difference?.lower === 0 && difference.upper === 0;
}

/** The verdict with all that belongs to it, such as `undecided: run about 40 more`. */
export function wholeVerdict(judged: Judged, worth: number): string {
  const beside = surelyText(judged);
  const [more, word] = [moreText(judged, worth), judged.verdict ?? ''];
  return `${word}${more && `: ${more}`}${beside && ` (${beside})`}`;
}

/** `Surely best in throughput: a.`, `May be best in throughput: a, b and c.` Of one or more, some of which may be best. */
export function bestText(
  best: readonly { readonly policy: string; readonly mayBeBest: boolean }[],
  measure: string,
): string {
  const names = best.filter(({ mayBeBest }) => mayBeBest).map(({ policy }) => policy);
  if (names.length === 1) return `Surely best in ${measure}: ${names[0]}.`;
  return `May be best in ${measure}: ${names.length === best.length ? 'any of them' : listedNames(names)}.`;
}
