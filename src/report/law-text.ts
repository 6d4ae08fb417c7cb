import { type Law, meanOf } from '../kernel/distributions/index.ts';
import { durationText } from './duration.ts';

/** A time in words: `12 s`, or what it is between, or about how long. */
export function lawText(law: Law): string {
  if (law.distribution === 'constant') return durationText(law.value);
  if (law.distribution === 'uniform' || law.distribution === 'triangular') {
    return `${durationText(law.low)} to ${durationText(law.high)}`;
  }
  return `about ${durationText(meanOf(law))}`;
}
