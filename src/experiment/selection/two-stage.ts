import { mean } from 'simple-statistics';
import { signOf } from '../../statistics/comparing/better.ts';
import { pairedTotal } from '../../statistics/selection/paired-total.ts';
import type { SelectionSettings } from './settings.ts';
import type { Standing, Values } from './standing.ts';

/** How the procedure in two stages stands after these values; those beyond its end are not looked at. */
export function twoStage(values: Values, settings: SelectionSettings): Standing {
  const { firstStage, most, confidence, worth, better } = settings;
  const there = Math.min(...values.map((own) => own.length));
  const left = values.map((_, i) => i);
  const open = { left, out: [], how: null, best: null };
  if (there < firstStage) return { ...open, runs: there, needed: null };
  const needed = pairedTotal(
    values.map((own) => own.slice(0, firstStage)),
    confidence,
    worth,
  );
  const runs = Math.min(needed, most);
  if (there < runs) return { ...open, runs: there, needed };
  const means = values.map((own) => signOf(better) * mean(own.slice(0, runs)));
  const best = means.indexOf(Math.max(...means));
  return { ...{ runs, left, out: [], best, needed }, how: needed <= most ? 'best mean' : 'most runs' };
}
