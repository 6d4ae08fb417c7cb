import type { Case, Value } from '../cases/case.ts';
import { SHARP_THROUGHPUT } from '../cases/case.ts';
import type { Judgement } from './judge.ts';
import { RUNS, type Verdict } from './rounds.ts';

export interface Judged {
  readonly title: string;
  readonly cases: readonly { readonly of: Case; readonly verdicts: readonly Verdict[] }[];
}

const number = (value: number): string => String(Number(value.toPrecision(6)));
const percent = (share: number): string => `${(100 * share).toFixed(share < 0.001 ? 3 : 2)} %`;

const simulated = ({ estimate, sharpness }: Judgement, exact: boolean): string[] =>
  exact
    ? [number(estimate.value), 'no spread', '0 %']
    : [
        number(estimate.value),
        `${number(estimate.lower!)} to ${number(estimate.upper!)}`,
        percent(sharpness),
      ];

function row(
  of: Case,
  { quantity, unit, expected, exact }: Value,
  { first, second, passed }: Verdict,
): string {
  const missed = second && `first ${simulated(first, exact).slice(0, 2).join(', ')}`;
  const what = of.option ? `${of.what}. Option: ${of.option}` : of.what;
  const cells = [
    ...[of.id, what, of.source, unit ? `${quantity}, ${unit}` : quantity, number(expected)],
    ...simulated(second ?? first, exact),
    ...[missed ?? '', passed ? 'yes' : '**NO**'],
  ];
  return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
}

const HEAD = [
  ...['case', 'what', 'source', 'quantity', 'expected', 'simulated', '99 % interval', 'half width'],
  ...['judged again', 'pass'],
];
const TABLE_HEAD = `| ${HEAD.join(' | ')} |\n|${HEAD.map(() => ' --- |').join('')}`;

/** The report of a validation as Markdown. */
export function table(groups: readonly Judged[]): string {
  const verdicts = groups.flatMap(({ cases }) => cases.flatMap((judged) => judged.verdicts));
  const failed = verdicts.filter(({ passed }) => !passed).length;
  const again = verdicts.filter(({ second }) => second).length;
  const sections = groups.map(({ title, cases }) => {
    const rows = cases.flatMap(({ of, verdicts }) =>
      of.values.map((value, i) => row(of, value, verdicts[i]!)),
    );
    return `## ${title}\n\n${TABLE_HEAD}\n${rows.join('\n')}`;
  });
  return `# What the engine gives where theory has the answer

${verdicts.length} values of theory and of published tables, each simulated as a line that anyone could describe in a scenario.
${failed === 0 ? 'All pass.' : `**${failed} do not pass.**`} \`npm run validate\` makes this page anew, to the same bytes, and fails when a value does not pass. The
cases stand in [tests/outside-checks/cases/](../tests/outside-checks/cases/).

- Each value is the mean over ${RUNS} independent runs, after a warm-up, under seeds that no other case has. Its interval is
  a two-sided t interval at 99 %. It passes when the expected value lies inside; and when the half width, here as a share
  of the expected value, is at most what the case asks for, so that no interval passes by being wide. For every
  throughput that is ${percent(SHARP_THROUGHPUT)}.
- About one true value in a hundred lies outside its own 99 % interval. So a value that misses is judged again, once, by
  four times the runs under fresh seeds, and that judgement is final. The column "judged again" shows when that
  happened and what the first round gave: ${again} of ${verdicts.length} here.
- "No spread": nothing in the case is random; every run must give the expected value itself.
- Line throughputs follow the literature's rules: the first station never starves, the last is never blocked, a
  finished part that has nowhere to go stays on its station, and places count those between stations only. Where a
  published model differs from that or from our defaults, "Option" names what in the scenario reproduces it.
- "Citation from memory": the numbers were worked out anew from the formula or the chain; that the source holds them was
  not looked up.

${sections.join('\n\n')}
`;
}
