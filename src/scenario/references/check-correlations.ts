import { mixingMatrix } from '../../statistics/mixing.ts';
import { correlationMatrix, type Lean } from '../correlations.ts';
import type { Path } from '../problem.ts';
import type { Checker } from './checker.ts';

const KINDS = { own: 'ownSd', sheet: 'sheetSd', lot: 'lotSd' } as const;
const SD_KEYS = { own: 'own-sd', sheet: 'sheet-sd', lot: 'lot-sd' } as const;

interface Varying {
  readonly name: string;
  readonly ownSd: number;
  readonly sheetSd?: number;
  readonly lotSd: number;
}

interface Correlation {
  readonly of: readonly [string, string];
  readonly own: number;
  readonly sheet?: number;
  readonly lot: number;
}

/** To what share of themselves the correlations would have to come down for a matrix to exist, in hundredths. */
function roomFor(names: readonly string[], leans: readonly Lean[]): number {
  let share = 99;
  const exists = () =>
    mixingMatrix(
      correlationMatrix(
        names,
        leans.map(({ of, by }) => ({ of, by: (by * share) / 100 })),
      ),
    ) !== null;
  while (!exists()) share--;
  return share / 100;
}

function checkMatrix(check: Checker, names: readonly string[], leans: readonly Lean[], path: Path): void {
  if (mixingMatrix(correlationMatrix(names, leans)) !== null) return;
  const pairs = leans.map(({ of, by }) => `${of[0]} and ${of[1]} ${by}`).join(', ');
  check.say(
    path,
    `nothing can vary so, the ${String(path.at(-1))} correlations contradict each other (${pairs}); ` +
      `all of them times ${roomFor(names, leans)} would agree`,
  );
}

/** Whether features can vary together as is said at `path`. */
export function checkCorrelations(
  check: Checker,
  features: readonly Varying[],
  given: readonly Correlation[],
  path: Path,
): void {
  const names = features.map(({ name }) => name);
  const before = check.found.length;
  const seen = new Set<string>();
  for (const [i, { of, ...by }] of given.entries()) {
    const at = [...path, i];
    const known = of.map((name, k) => check.known([...at, 'of', k], name, names, 'feature here'));
    if (known.includes(false)) continue;
    if (of[0] === of[1]) check.say([...at, 'of'], 'expected two different features');
    const pair = [...of].sort().join('\n');
    if (seen.has(pair)) check.say([...at, 'of'], `${of[0]} and ${of[1]} are listed twice`);
    seen.add(pair);
    for (const kind of ['own', 'sheet', 'lot'] as const) {
      const still = of.find((name) => !features.find((it) => it.name === name)?.[KINDS[kind]]);
      if (by[kind] && still !== undefined)
        check.say([...at, kind], `"${still}" has no ${SD_KEYS[kind]}, so there is nothing to vary together`);
    }
  }
  if (check.found.length > before) return;
  for (const kind of ['own', 'sheet', 'lot'] as const) {
    const leans = given.flatMap(({ of, ...by }) => (by[kind] ? [{ of, by: by[kind] }] : []));
    checkMatrix(check, names, leans, [...path, kind]);
  }
}
