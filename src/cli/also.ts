import type { Comparison } from '../experiment/comparison.ts';
import type { Spread } from '../experiment/spread.ts';
import type { TargetFound } from '../experiment/targets.ts';
import type { Twins } from '../experiment/twins.ts';
import type { Outcome } from '../line/outcome.ts';
import type { Further } from '../report/further-charts.ts';
import type { Origin } from '../report/origin.ts';
import type { OutputFolder } from '../report/output-folder.ts';
import { suggestion } from '../scenario/nearest.ts';
import { UsageError } from './usage-error.ts';

/** Kinds of files that a report has only when asked for, in the order in which they are written. */
export const ALSO_KINDS = ['parquet', 'latex', 'markdown', 'svg'] as const;
type Kind = (typeof ALSO_KINDS)[number];

/** What they are called in the folder of the report; of charts there are several. */
const NAMES: Readonly<Record<Kind, string>> = {
  parquet: 'runs.parquet',
  latex: 'comparison.tex',
  markdown: 'comparison.md',
  svg: 'charts',
};
const CHART = /^(?:(?:intervals|states|rates|spread|causes|sizes|levels)-.+|warm-up)\.svg$/;

/** What the files are made from. */
interface Found extends Further {
  readonly title: string;
  readonly comparison: Comparison;
  readonly outcomes: readonly Outcome[];
  readonly twins: Twins | undefined;
  readonly spread: Spread;
  readonly targets: readonly TargetFound[];
  readonly origin: Origin;
}

interface Made {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/**
 * The kinds that are asked for, each once, in their order.
 * @param given values of --also: one kind each, or several with commas between them
 * @throws UsageError
 */
export function alsoKinds(given: readonly string[] = []): Kind[] {
  const words = given.flatMap((one) => one.split(',')).map((word) => word.trim());
  for (const word of words)
    if (!(ALSO_KINDS as readonly string[]).includes(word))
      throw new UsageError(
        word === ''
          ? `--also expects one or more of ${ALSO_KINDS.join(', ')}`
          : `--also knows no "${word}"${suggestion(word, ALSO_KINDS)}`,
      );
  return ALSO_KINDS.filter((kind) => words.includes(kind));
}

/** Loaded only when asked for: most reports need none of it. */
const MAKE: Readonly<Record<Kind, (found: Found) => Promise<readonly Made[]>>> = {
  async parquet({ outcomes, origin }) {
    const { runsParquet } = await import('../report/parquet.ts');
    return [{ name: NAMES.parquet, content: runsParquet(outcomes, origin) }];
  },
  async latex({ comparison, twins, ...rest }) {
    const [{ paperOf }, { latex }] = [
      await import('../report/paper-tables.ts'),
      await import('../report/latex.ts'),
    ];
    return [{ name: NAMES.latex, content: latex(paperOf(comparison, twins, rest)) }];
  },
  async markdown({ comparison, twins, ...rest }) {
    const [{ paperOf }, { markdown }] = [
      await import('../report/paper-tables.ts'),
      await import('../report/markdown.ts'),
    ];
    return [{ name: NAMES.markdown, content: markdown(paperOf(comparison, twins, rest)) }];
  },
  async svg({ comparison, origin, ...shown }) {
    const { chartFiles } = await import('../report/chart-files.ts');
    return chartFiles(comparison, shown, origin).map(({ name, content }) => ({
      name: `${NAMES.svg}/${name}`,
      content,
    }));
  },
};

/** Writes these kinds of files and removes those of an earlier report, whose numbers would be others. Returns what was written. */
export async function writeAlso(
  folder: OutputFolder,
  kinds: readonly Kind[],
  found: Found,
): Promise<string[]> {
  for (const kind of ALSO_KINDS)
    if (kind === 'svg') folder.removeAll(NAMES.svg, CHART);
    else if (!kinds.includes(kind)) folder.remove(NAMES[kind]);
  for (const kind of kinds)
    for (const { name, content } of await MAKE[kind](found)) folder.write(name, content);
  return kinds.map((kind) => (kind === 'svg' ? `${NAMES.svg}/` : NAMES[kind]));
}
