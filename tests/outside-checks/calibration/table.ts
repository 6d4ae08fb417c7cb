import type { Calibration } from './calibration.ts';
import { COVERED, type Judgement, WRONG } from './judge.ts';

/** Experiments of each case. */
export const EXPERIMENTS = 2000;

export interface Judged {
  readonly of: Calibration;
  readonly judgement: Judgement;
}

interface JudgedGroup {
  readonly title: string;
  readonly cases: readonly Judged[];
}

const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;
const short = (share: number): string => `${Number((100 * share).toPrecision(6))}`;

const [LEAST, MOST] = COVERED;

function asked({ claim, stated }: Calibration): string {
  if (claim === 'covers') return `${short(LEAST)} to ${short(MOST)} %`;
  return claim === 'at least' ? `at least ${short(stated)} %` : `at most ${short(WRONG)} %`;
}

function row({ of, judgement: { share, passed } }: Judged): string {
  const cells = [
    ...[of.id, of.what, of.source, of.exact, percent(of.stated)],
    of.theory === null ? '' : percent(of.theory),
    ...[percent(share.value), `${percent(share.lower!)} to ${percent(share.upper!)}`],
    ...[asked(of), passed ? 'yes' : '**NO**'],
  ];
  return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
}

const HEAD = [
  ...['case', 'what', 'source', 'exact', 'stated', 'by theory', 'found', '95 % interval', 'asked', 'pass'],
];
const TABLE_HEAD = `| ${HEAD.join(' | ')} |\n|${HEAD.map(() => ' --- |').join('')}`;

/** The report of a calibration as Markdown. */
export function table(groups: readonly JudgedGroup[], version: string): string {
  const all = groups.flatMap(({ cases }) => cases);
  const missed = all.filter(({ judgement }) => !judgement.passed).length;
  const sections = groups.map(
    ({ title, cases }) => `## ${title}\n\n${TABLE_HEAD}\n${cases.map(row).join('\n')}`,
  );
  return `# Whether intervals, verdicts and choices are right as often as they say

${all.length} cases with known answers, ${EXPERIMENTS} experiments each, by mendline ${version}. ${
    missed === 0 ? 'All pass.' : `**${missed} do not pass.**`
  } \`npm run
calibrate-intervals\` makes this page anew, to the same bytes, and fails when a case does not pass. The cases stand in
[tests/outside-checks/calibration/](../tests/outside-checks/calibration/).

- "Found" is the share of the experiments in which the interval held the exact value, all intervals that are to hold together
  held theirs, or the best was chosen; where the row asks for "at most", the share in which something wrong was said. Its own
  interval is Wilson's at 95 %.
- A single interval is to cover in ${short(LEAST)} to ${short(MOST)} % of the experiments. Of a method that covers in just 95 %, two
  cases in a thousand miss that by chance. What is said of several equal systems is to be wrong in ${short(WRONG)} % at most. What is
  stated as "at least" passes unless the whole interval of the share lies below it: some of these methods hold what they
  state exactly, and then half of all shares lie below it by chance.
- "By theory" is the exact probability in this case, where it is known. Order statistics and proportions go by whole numbers,
  so that they cannot cover in just 95 %; what they do cover follows from the binomial law.
- The draws of experiment number n, from 0 to ${EXPERIMENTS - 1}, come from the stream that the seed n and the name of the case decide.
  Experiments on lines have seeds that no other case has. Nothing else enters, so a case that passes once passes until
  the method, the case or the engine changes.
- "From memory": that the source says so was not looked up.

${sections.join('\n\n')}
`;
}
