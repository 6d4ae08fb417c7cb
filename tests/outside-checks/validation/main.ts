// Simulates every case with published answer, writes reports/validation.md and fails when a value does not pass.
import { mkdirSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname } from 'node:path';
import { Tinypool } from 'tinypool';
import type { Case } from '../cases/case.ts';
import { GROUPS } from '../cases/index.ts';
import { type Runner, type Verdict, validate } from './rounds.ts';
import { type Judged, table } from './table.ts';

const REPORT = 'reports/validation.md';

const threads = availableParallelism();
const pool = new Tinypool({
  filename: new URL('./worker.js', import.meta.url).href,
  minThreads: threads,
  maxThreads: threads,
});
const run: Runner = async ({ id }, seed) => {
  try {
    return (await pool.run({ id, seed })) as number[];
  } catch (error) {
    throw new Error(`${id} under seed ${seed}: ${(error as Error).message}`);
  }
};

/** One line on each value as it is judged, since the whole takes minutes. */
function tell(of: Case, verdicts: readonly Verdict[]): void {
  for (const [i, { first, second, passed }] of verdicts.entries()) {
    const { quantity, expected } = of.values[i]!;
    const { estimate, sharpness } = second ?? first;
    const found = `simulated ${estimate.value} (${estimate.lower} to ${estimate.upper}, ${sharpness})`;
    const again = second ? `, at first ${first.estimate.value}` : '';
    console.error(
      `${passed ? 'passed' : 'FAILED'}  ${of.id}: ${quantity}: expected ${expected}, ${found}${again}`,
    );
  }
}

const judged: Judged[] = await Promise.all(
  GROUPS.map(async ({ title, cases }) => ({
    title,
    cases: await Promise.all(
      cases.map(async (of) => {
        const verdicts = await validate(of, run);
        tell(of, verdicts);
        return { of, verdicts };
      }),
    ),
  })),
);
await pool.destroy();

mkdirSync(dirname(REPORT), { recursive: true });
writeFileSync(REPORT, table(judged));
const failed = judged
  .flatMap(({ cases }) => cases.flatMap(({ verdicts }) => verdicts))
  .filter(({ passed }) => !passed).length;
console.error(`${failed === 0 ? 'all passed' : `${failed} failed`}: ${REPORT}`);
if (failed > 0) process.exitCode = 1;
