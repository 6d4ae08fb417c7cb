import type { SettingSpec } from '../scenario/forming/setting.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { SpecOf, StationSpec } from '../scenario/stations.ts';
import { type Quantity, unitsOf } from '../scenario/units.ts';
import { meanWall } from '../standards/draw-ratio.ts';
import { durationText } from './duration.ts';

type Form = SpecOf<'form'> & { readonly name: string };

const number = (value: number) => String(Number(value.toPrecision(3))).replace('-', '\u2212');
const quantityText = ({ value, dimension }: Quantity) => `${number(value)} ${unitsOf(dimension)[0]}`;

/** What becomes of flawed parts. */
const OUTSIDE = { scrap: 'scrapped', pass: 'passed on unseen, never to fit' } as const;

/** The mean wall of a sheet of nominal thickness formed at the target, mm; null where the station has no wall. */
export function nominalWall(spec: StationSpec, { stocks }: Scenario): number | null {
  if (spec.does !== 'form' || !spec.wall) return null;
  const { nominal } = stocks.find(({ name }) => name === spec.takes)!.thickness!;
  return meanWall(nominal, spec.wall.drawRatio);
}

function wallText(spec: Form, scenario: Scenario): string[] {
  const { wall } = spec;
  if (!wall) return [];
  const mean = nominalWall(spec, scenario)!;
  const told = `mean wall ${number(mean)} mm at a draw ratio of ${number(wall.drawRatio)}`;
  const fate = `parts thinner than ${number(wall.least)} mm are ${OUTSIDE[wall.outside]}`;
  if (mean >= wall.least) return [`${told}; ${fate}`];
  const thicker = `${number(Math.ceil(wall.least * wall.drawRatio * 1000) / 1000)} mm`;
  return [
    `warning: ${told} lies below the least, ${number(wall.least)} mm: take sheet of ${thicker} or more, or draw it less deep; ${fate}`,
  ];
}

function windowText({ window }: Form): string[] {
  if (!window) return [];
  const { setting, from, to, outside } = window;
  const ends = [
    ...(from ? [`incomplete below ${quantityText(from)}`] : []),
    ...(to ? [`webbed above ${quantityText(to)}`] : []),
  ];
  return [`parts are ${ends.join(', ')} of "${setting}", and then ${OUTSIDE[outside]}`];
}

function settingText({ name, target, wander, drift, sensorBias, whenCold, moves }: SettingSpec): string[] {
  const unit = unitsOf(target.dimension)[0];
  const bounds = [
    moves?.from && `from ${quantityText(moves.from)}`,
    moves?.to && `to ${quantityText(moves.to)}`,
  ];
  const steps = [
    moves?.step && `in steps of ${quantityText(moves.step)}`,
    ...bounds,
    moves?.delay ? `after ${durationText(moves.delay)}` : undefined,
  ].filter((step) => step);
  const told = [
    ...(wander
      ? [
          `wanders by a standard deviation of ${quantityText(wander.sd)}, pulled back in ${durationText(wander.pullBack)}`,
        ]
      : []),
    ...(drift ? [`drifts by ${number(drift.value * 3600)} ${unit} an hour until fixed`] : []),
    ...(sensorBias ? [`is off by ${number(-sensorBias.value)} ${unit} unseen by its sensor`] : []),
    ...(whenCold
      ? [
          `is off by ${quantityText(whenCold.by)} after idling for more than ${durationText(whenCold.after)}, fading in ${durationText(whenCold.fades)}`,
        ]
      : []),
    ...(steps.length > 0 ? [`can be moved ${steps.join(' ')}`] : []),
  ];
  return told.length > 0 ? [`"${name}" ${told.join(', ')}`] : [];
}

/** How a forming station's settings behave, and which of its parts are flawed; nothing where none of it is given. */
export function formingTexts(spec: StationSpec, scenario: Scenario): string[] {
  if (spec.does !== 'form') return [];
  return [...(spec.settings ?? []).flatMap(settingText), ...windowText(spec), ...wallText(spec, scenario)];
}
