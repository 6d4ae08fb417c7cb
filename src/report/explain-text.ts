import type {
  ExplainedAssembly,
  ExplainedFeature,
  ExplainedGauge,
  ExplainedPair,
  ExplainedReader,
  Explanation,
} from '../experiment/explanation.ts';
import type { Compared } from '../experiment/judge.ts';
import type { Contribution } from '../line/prediction/model.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { percentLevel } from './cells.ts';
import { cut, padLeft, padRight, printable, wrap } from './columns.ts';
import { durationText } from './duration.ts';
import { type ExplainedCells, explainedCells } from './explain-cells.ts';
import { reasonsToDiffer } from './explain-reasons.ts';
import { fixed, percent } from './format.ts';
import { counted } from './words.ts';

/** Columns of the table at its full width; a narrower terminal goes without the interval. */
const FULL = 80;
const NUMBER = 11;
const INTERVAL = 22;
const MARK = 2;

function line({ label, predicted, simulated, interval, mark }: ExplainedCells, width: number): string {
  const numbers = padLeft(predicted, NUMBER) + padLeft(simulated, NUMBER);
  const tail = (width >= FULL ? padLeft(interval, INTERVAL) : '') + (mark && ` ${mark}`);
  const room = width - 2 * NUMBER - (width >= FULL ? INTERVAL : 0) - MARK;
  return padRight(cut(printable(label), room - 1), room) + numbers + tail;
}

function heading(label: string, shown: number, width: number): string {
  const interval = `${percentLevel(shown)} % interval`;
  return line({ label, predicted: 'predicted', simulated: 'simulated', interval, mark: '' }, width);
}

const row = (label: string, compared: Compared, width: number, factor = 1): string =>
  line(explainedCells(`    ${label}`, compared, factor), width);

/** Text below a table's row, as far in as the rows. */
const note = (text: string, width: number): string[] =>
  wrap(printable(text), width - 4, '  ').map((it) => `    ${it}`);

/** The name of a thing and what is known of it. */
const title = (text: string, width: number): string[] =>
  wrap(printable(text), width - 2, '  ').map((it) => `  ${it}`);

/** mm, with no more digits than it has. */
const size = (value: number): string => `${fixed(value, 6).replace(/\.?0+$/, '')} mm`;

function fromText(from: readonly Contribution[]): string {
  const sum = from.reduce((total, { variance }) => total + variance, 0);
  if (sum === 0) return 'does not vary';
  const shares = from.map(({ name, variance }) => `${name} ${percent(variance / sum)} %`);
  return `variance from: ${shares.join(', ')}`;
}

const index = (value: number): string => (Number.isFinite(value) ? fixed(value, 2) : 'without bound');

function featureLines(it: ExplainedFeature, width: number): string[] {
  const { name, madeAt, aim, limits } = it.spec;
  const within = limits ? `, limits ${size(limits.lower)} to ${size(limits.upper)}` : ', no limits';
  return [
    ...title(`${name}, made at ${madeAt}: aim ${size(aim)}${within}`, width),
    row('mean, mm', it.mean, width),
    row('standard deviation, mm', it.sd, width),
    ...(it.outside ? [row('outside the limits, %', it.outside, width, 100)] : []),
    ...(it.pp === null || it.ppk === null ? [] : note(`Pp ${index(it.pp)}, Ppk ${index(it.ppk)}`, width)),
    ...note(fromText(it.from), width),
  ];
}

function pairLines(it: ExplainedPair, width: number): string[] {
  return [
    ...title(`${it.shaft} in ${it.hole}: clearance ${size(it.least)} to ${size(it.most)}`, width),
    row('clearance, mm', it.clearance, width),
    row('standard deviation, mm', it.sd, width),
    row('fits, %', it.fits, width, 100),
    row('too tight, %', it.tight, width, 100),
    row('too loose, %', it.loose, width, 100),
    ...note(fromText(it.from), width),
  ];
}

function assemblyLines({ station, pairs, all }: ExplainedAssembly, width: number): string[] {
  return [
    ...pairs.flatMap((pair) => pairLines(pair, width)),
    ...title(`${station}, at the first attempt with a new mate`, width),
    row(pairs.length > 1 ? 'all pairs fit, %' : 'fits, %', all, width, 100),
  ];
}

function gaugeLines({ station, features, off }: ExplainedGauge, width: number): string[] {
  return features
    .flatMap(({ name, errorShare, off, badPassed, goodRejected }) => [
      ...title(
        `${name} at ${station}: gauge error ${percent(errorShare)} % of the spread of the readings`,
        width,
      ),
      ...(off ? [row('read off limits, %', off, width, 100)] : []),
      ...(badPassed ? [row('bad, but read as good, %', badPassed, width, 100)] : []),
      ...(goodRejected ? [row('good, but read as bad, %', goodRejected, width, 100)] : []),
    ])
    .concat(
      off && features.length > 1
        ? [...title(`${station}, all it measures`, width), row('parts off limits, %', off, width, 100)]
        : [],
    );
}

const readerLines = ({ station, unread }: ExplainedReader, width: number): string[] => [
  ...title(`in front of ${station}`, width),
  row('not read, %', unread, width, 100),
];

function basis({ seeds }: Explanation, { run, stations }: Scenario): string {
  const tried = stations.some((at) => at.does === 'assemble' && at.mateTries > 1);
  return (
    'Predicted: from the scenario alone, as a linear model with normal and discrete sources of variation. ' +
    `Simulated: ${counted(seeds, 'run')} of ${durationText(run.length)} after ${durationText(run.warmUp)} of ` +
    'warm-up, without disturbances and under no policy; breakdowns, rework and whatever else belongs to the line stay.' +
    (tried ? ' Mates are tried once, so that each attempt has a new one.' : '')
  );
}

/** What the asterisks mean here; nothing where there are none. */
function verdict(explanation: Explanation, scenario: Scenario): string[] {
  const { seeds, deciding, comparisons } = explanation;
  if (seeds < 2) return ['One run gives no interval, so nothing is said about whether they agree.'];
  const all = [
    ...explanation.features.flatMap(({ mean, sd, outside }) => [mean, sd, outside]),
    ...explanation.assemblies.flatMap(({ pairs, all }) => [
      all,
      ...pairs.flatMap(({ clearance, sd, fits, tight, loose }) => [clearance, sd, fits, tight, loose]),
    ]),
    ...explanation.gauges.flatMap(({ features, off }) => [
      off,
      ...features.flatMap((it) => [it.off, it.badPassed, it.goodRejected]),
    ]),
    ...explanation.readers.map(({ unread }) => unread),
  ];
  const differing = all.filter((it) => it?.differs).length;
  const level = `${percentLevel(deciding)} %`;
  if (differing === 0)
    return [`No prediction lies outside what the runs allow (${comparisons} values, at ${level} together).`];
  const reasons = reasonsToDiffer(scenario);
  const why =
    reasons.length > 0
      ? `Here that can be because ${reasons.join('; ')}.`
      : 'Nothing in this scenario is known to make it so: the model may not be what was meant.';
  return [
    `* ${differing} of ${comparisons} predictions lie outside what the runs allow, at ${level} together. ${why}`,
  ];
}

/** Predicted and simulated dimensions side by side. */
export function explainText(explanation: Explanation, scenario: Scenario, width: number): string {
  const { features, assemblies, gauges, readers, shown } = explanation;
  const section = (name: string, lines: readonly string[]) =>
    lines.length > 0 ? [heading(name, shown, width), ...lines, ''] : [];
  const body = [
    ...section(
      'What each feature becomes',
      features.flatMap((it) => featureLines(it, width)),
    ),
    ...section(
      'What goes together',
      assemblies.flatMap((it) => assemblyLines(it, width)),
    ),
    ...section(
      'What the gauges make of it',
      gauges.flatMap((it) => gaugeLines(it, width)),
    ),
    ...section(
      'How marks are read',
      readers.flatMap((it) => readerLines(it, width)),
    ),
  ];
  const said =
    body.length > 0
      ? [basis(explanation, scenario), ...verdict(explanation, scenario)]
      : [
          'There is nothing to explain: the parts have no features, and no marks are read. "check" tells of the line.',
        ];
  return [
    ...wrap(printable(scenario.title), width),
    '',
    ...body,
    ...said.flatMap((text) => wrap(printable(text), width)),
    '',
  ].join('\n');
}
