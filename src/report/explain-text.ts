import type { Explanation } from '../experiment/explanation.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { percentLevel } from './cells.ts';
import { printable, wrap } from './columns.ts';
import { durationText } from './duration.ts';
import { assemblyLines } from './explained/assemblies.ts';
import { featureLines } from './explained/features.ts';
import { formingLines } from './explained/forming.ts';
import { gaugeLines } from './explained/gauges.ts';
import { markLines, readerLines } from './explained/reading.ts';
import { leftOut, reasonsToDiffer } from './explained/reasons.ts';
import { heading } from './explained/rows.ts';
import { counted } from './words.ts';

function basis({ seeds }: Explanation, scenario: Scenario): string {
  const { run, stations } = scenario;
  const drifts = stations.some((at) => at.does === 'form' && at.settings?.some(({ drift }) => drift));
  const unknown = leftOut(scenario);
  const tried = stations.some((at) => at.does === 'assemble' && at.mateTries > 1);
  return (
    'Predicted: from the scenario alone, by normal and discrete sources of variation. ' +
    (drifts ? 'What drifts counts as spread over the run. ' : '') +
    (unknown.length > 0 ? `Not predicted: ${unknown.join('; ')}. ` : '') +
    `Simulated: ${counted(seeds, 'run')} of ${durationText(run.length)} after ${durationText(run.warmUp)} of ` +
    'warm-up, without disturbances and under no policy; breakdowns, rework and whatever else belongs to the line stay.' +
    (tried ? ' Mates are tried once, so that each attempt has a new one.' : '')
  );
}

/** What the asterisks mean here; nothing where there are none. */
function verdict(explanation: Explanation, scenario: Scenario): string[] {
  const { seeds, deciding, comparisons, differing } = explanation;
  if (seeds < 2) return ['One run gives no interval, so nothing is said about whether they agree.'];
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
  const { forming, features, assemblies, gauges, marks, readers, shown } = explanation;
  const section = <Of>(name: string, them: readonly Of[], lines: (it: Of, width: number) => string[]) =>
    them.length > 0 ? [heading(name, shown, width), ...them.flatMap((it) => lines(it, width)), ''] : [];
  const read = readers.length > 0 ? marks.flatMap((it) => markLines(it, width)) : [];
  const body = [
    ...section('What forming makes of the sheet', forming, formingLines),
    ...section('What each feature becomes', features, featureLines),
    ...section('What fits at the first attempt', assemblies, assemblyLines),
    ...section('What the gauges make of it', gauges, gaugeLines),
    ...section('How marks are read', readers, (it, to) => [
      ...(it === readers[0] ? read : []),
      ...readerLines(it, to),
    ]),
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
