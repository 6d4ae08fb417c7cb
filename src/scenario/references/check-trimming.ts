import type { Path } from '../problem.ts';
import type { SpecOf } from '../stations.ts';
import type { Checker } from './checker.ts';

type Trimming = SpecOf<'trim'> & { readonly name: string };

/** Whether a feature made at the station wears. One of a part with problems of its own may, or one made where nothing trims. */
function wearsFeatures(check: Checker, { name }: Trimming): boolean {
  const parts = check.raw.parts ?? [];
  if (parts.length < check.names.parts.length) return true;
  const mayBeHere = (madeAt: string) => madeAt === name || check.stations.get(madeAt)?.does !== 'trim';
  return parts.some(({ features }) => features.some(({ madeAt, wear }) => wear && mayBeHere(madeAt)));
}

/** What puts a new tool in at a trimming station. */
export function checkTrimming(check: Checker, station: Trimming, path: Path): void {
  const { name, tool, setUps, maintenance, breakdowns } = station;
  if (!tool) return;
  const known = [...setUps, ...maintenance, ...breakdowns].map((it) => it.name);
  for (const [i, word] of tool.renewedBy.entries())
    check.known(
      [...path, 'tool', 'renewed-by', i],
      word,
      known,
      `set-up, maintenance or breakdown of "${name}"`,
    );
  if (!tool.burr && !wearsFeatures(check, station))
    check.say(
      [...path, 'tool'],
      `nothing depends on this tool: give it a "burr" or a feature that is made at "${name}" a "wear", or take it out`,
    );
}
