import { readWarm } from '../line/reading-bias.ts';
import type { Inspection } from '../scenario/inspection.ts';
import type { ReadingSpec } from '../scenario/readings.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { SpecOf } from '../scenario/stations.ts';
import { samplingPlan } from '../standards/iso-2859.ts';
import { REFERENCE_TEMPERATURE } from '../standards/thermal-expansion.ts';
import { acceptanceProbability, shareAccepted } from '../statistics/operating-characteristic.ts';
import { durationText } from './duration.ts';
import { percent } from './format.ts';
import { counted } from './words.ts';

/** Significant digits of a standard deviation. */
const DIGITS = 3;
const millimetres = (value: number): string => `${Number(value.toPrecision(DIGITS))} mm`;

const asPercent = (share: number): string => `${Number((share * 100).toPrecision(DIGITS))} %`;

/** A lot like that is accepted nearly always; a lot like this is accepted seldom. */
const [OFTEN, SELDOM] = [0.95, 0.1];

function planText({ lot, aql, rejected }: Extract<Inspection, { by: 'plan' }>): string {
  const [normal, tightened] = (['normal', 'tightened'] as const).map((it) => samplingPlan(lot, aql, it));
  const { letter, sample, accept } = normal!;
  const whole = sample >= lot ? ' (the whole lot)' : '';
  const chance = percent(acceptanceProbability(sample, accept, aql));
  const curve =
    accept < sample
      ? `; it accepts ${chance} % of lots at the AQL, and ${percent(OFTEN)} % and ${percent(SELDOM)} % of lots with ` +
        `${asPercent(shareAccepted(sample, accept, OFTEN))} and ${asPercent(shareAccepted(sample, accept, SELDOM))} off limits`
      : '';
  const then = { screen: 'the rest of a rejected lot is gauged', scrap: 'a rejected lot is scrapped' };
  return (
    `inspects lots of ${lot} by ISO 2859-1, level II, AQL ${asPercent(aql)}: letter ${letter}, sample ${sample}${whole}, accepted ` +
    `up to ${accept} off limits; tightened, sample ${tightened!.sample} up to ${tightened!.accept}${curve}; ` +
    (then[rejected as keyof typeof then] ?? `a rejected lot goes to "${rejected}"`)
  );
}

/** Undefined for one in so many, which is the usual way. */
function inspectionText(inspection: Inspection): string | undefined {
  switch (inspection.by) {
    case 'count':
      return undefined;
    case 'clock':
      return `gauges the next part after each ${durationText(inspection.every)}`;
    case 'delivery':
      return `gauges the first ${counted(inspection.first, 'part')} of each delivery`;
    case 'plan':
      return planText(inspection);
  }
}

/** A gauge without any spread tells all parts apart. */
const categoriesText = (categories: number): string =>
  Number.isFinite(categories) ? `${categories} distinct categories` : 'which tells all its parts apart';

function warmText(spec: ReadingSpec, { parts }: Scenario): string[] {
  const { name, warmBy = 0 } = spec;
  if (warmBy === 0) return [];
  const grown = readWarm(spec, parts.flatMap(({ features }) => features).find((it) => it.name === name)!);
  const degrees = `${Number(Math.abs(warmBy).toPrecision(DIGITS))} °C ${warmBy > 0 ? 'warmer' : 'colder'}`;
  return [
    `${millimetres(Math.abs(grown))} ${grown < 0 ? 'smaller' : 'larger'} for being ${degrees} than ${REFERENCE_TEMPERATURE} °C`,
  ];
}

/** What spreads the readings of a part; undefined where nothing does. */
function errorText({ study, repeatability, reproducibility }: ReadingSpec): string | undefined {
  const repeats = `repeats to ${millimetres(repeatability)}`;
  const both = `${repeats} and reproduces to ${millimetres(reproducibility)}`;
  if (study)
    return (
      `by its gauge study ${both}, ${percent(study.gaugeShare)} % of the spread of the study, ` +
      categoriesText(study.categories)
    );
  if (reproducibility > 0) return both;
  return repeatability > 0 ? repeats : undefined;
}

function readingText(spec: ReadingSpec, scenario: Scenario): string[] {
  const { name, study, reproducibility, resolution, guard, takes } = spec;
  const error = errorText(spec);
  const told = [
    ...warmText(spec, scenario),
    ...(resolution > 0 ? [`in steps of ${millimetres(resolution)}`] : []),
    ...(guard > 0 ? [`judged ${millimetres(guard)} within its limits`] : []),
    ...(takes > 0 ? [`takes ${durationText(takes)}`] : []),
  ];
  // One that only repeats is the usual one.
  if (told.length === 0 && !study && reproducibility === 0) return [];
  return [`reading of "${name}": ${[...(error ? [error] : []), ...told].join(', ')}`];
}

/** What a gauge does besides reading one part in so many, exactly but for its repeatability, which is told with what else a reading has. */
export function gaugeTexts(spec: SpecOf<'gauge'>, scenario: Scenario): string[] {
  const inspection = inspectionText(spec.inspection);
  return [
    ...(inspection === undefined ? [] : [inspection]),
    ...spec.measures.flatMap((reading) => readingText(reading, scenario)),
    ...(spec.appraisers > 1 ? [`read by ${spec.appraisers} appraisers`] : []),
  ];
}
