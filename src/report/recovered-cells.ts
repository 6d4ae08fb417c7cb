import { LEVEL } from '../experiment/comparison.ts';
import type { Recovered } from '../experiment/recovered.ts';
import type { Estimate } from '../statistics/estimate.ts';
import { percentLevel } from './cells.ts';
import { type Format, formatOf } from './format.ts';

export const RECOVERED_HEADING = 'what each policy recovered of what could be recovered';

const SHARE = { shown: { unit: '%', factor: 100 } };
const RATE = { shown: { unit: 'good /h', factor: 1 } };

const writtenAs = (shown: typeof SHARE, estimates: readonly Estimate[]): Format =>
  formatOf({ measure: shown, rows: estimates.map((estimate) => ({ estimate })) });

const withInterval = (format: Format, estimate: Estimate): string =>
  estimate.lower === null
    ? 'one run, no interval'
    : `${percentLevel(LEVEL)} % interval ${format.interval(estimate)}`;

/** A row a policy, with its share in %. Empty where there is nothing to recover. */
export function recoveredRows({ shares }: Recovered): { policy: string; share: string; interval: string }[] {
  if (shares === null || shares.length === 0) return [];
  const format = writtenAs(
    SHARE,
    shares.map(({ share }) => share),
  );
  return shares.map(({ policy, share }) => ({
    policy,
    share: format.value(share.value),
    interval: share.lower === null ? '' : format.interval(share),
  }));
}

/** What the shares are of, or why there are none, and how they are to be read. */
export function recoveredNotes({ bound, baseline, recoverable, shares }: Recovered): string[] {
  const format = writtenAs(RATE, [recoverable]);
  const more = `${bound} makes ${format.signed(recoverable.value)} ${format.unit} against ${baseline} (${withInterval(format, recoverable)})`;
  const stands =
    `${bound} is a bound and no policy: it knows true values and all that is to come, ends at once and at no cost what a ` +
    'fix could end, has ordered ahead of what suppliers do, and spends no time on assembling what does not fit. Stations that stop, breakdowns, crews that are away, ' +
    'conveyors and demand it leaves as they are.';
  if (shares === null)
    return [`${more}, so these runs show no loss that could be recovered, and no shares of it.`, stands];
  return [
    `${more}: that is the recoverable loss, of which each share is what the policy makes beyond ${baseline}.`,
    stands,
    `A share below 0 % is of a policy that makes it worse than ${baseline}. One above 100 % is of a policy that helps against ` +
      'something else, too, such as a line that is off or short of stock without being disturbed, or goes round what ' +
      'the bound leaves as it is; that is no contradiction.' +
      (recoverable.lower === null
        ? ''
        : ` Intervals: ${percentLevel(LEVEL)} %, each by itself, for a ratio of paired means by Fieller's theorem.`),
  ];
}
