import type { Scenario } from '../../scenario/scenario.ts';
import type { StationSpec } from '../../scenario/stations.ts';

function formingReasons(spec: StationSpec): string[] {
  if (spec.does !== 'form') return [];
  const { name, settings = [], window, wall } = spec;
  const fates = [window?.outside, wall?.outside];
  return [
    ...settings.flatMap((it) => (it.whenCold ? [`"${it.name}" is off while "${name}" is cold`] : [])),
    ...settings.flatMap((it) =>
      it.drift ? [`"${it.name}" drifts, and parts need not be made evenly over the run`] : [],
    ),
    ...(fates.includes('scrap')
      ? [`"${name}" scraps parts with a flaw, and later stations see only the others`]
      : []),
    ...(fates.includes('pass')
      ? [`parts with a flaw pass "${name}", count as off limits where gauged, and are not pressed`]
      : []),
  ];
}

function gaugeReasons(spec: StationSpec): string[] {
  if (spec.does !== 'gauge') return [];
  const { name, inspection, offLimits } = spec;
  const lots =
    inspection.by === 'plan'
      ? [
          `parts of a lot at "${name}" vary together, and runs begin under normal inspection`,
          inspection.rejected === 'screen'
            ? `"${name}" gauges more parts of bad lots than of good ones`
            : `"${name}" takes lots out, and later stations see only those it accepts`,
        ]
      : [];
  return [
    ...(offLimits === 'pass'
      ? []
      : [`"${name}" takes parts out, and later stations see only what it lets through`]),
    ...lots,
  ];
}

function toolReasons(spec: StationSpec, { parts }: Scenario): string[] {
  if (spec.does !== 'trim') return [];
  const wears = parts.some(({ features }) =>
    features.some(({ wear, madeAt }) => wear && madeAt === spec.name),
  );
  return wears ? [`a run need not see whole lives of the tool of "${spec.name}"`] : [];
}

function otherReasons(spec: StationSpec): string[] {
  const reader = 'reader' in spec ? spec.reader : undefined;
  return [
    ...(spec.does === 'rework' ? [`"${spec.name}" alters parts, which come to other stations again`] : []),
    ...(reader?.unread.scraps ? [`"${spec.name}" scraps parts by their marks, not by their dimensions`] : []),
    ...(reader?.unread.reMark ? [`parts marked anew come to "${spec.name}" again`] : []),
  ];
}

/** What in this scenario can make an undisturbed run differ from its prediction, in clauses. */
export const reasonsToDiffer = (scenario: Scenario): string[] =>
  [formingReasons, (spec: StationSpec) => toolReasons(spec, scenario), gaugeReasons, otherReasons].flatMap(
    (reasons) => scenario.stations.flatMap(reasons),
  );

/** What of this scenario the prediction does not know, in clauses. */
export function leftOut({ stations }: Scenario): string[] {
  return stations.flatMap((spec) =>
    spec.does === 'form' && spec.settings?.some(({ whenCold }) => whenCold)
      ? [`that "${spec.name}" is off while it is cold`]
      : [],
  );
}
