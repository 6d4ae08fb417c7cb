import { standardNormal } from '../../../kernel/distributions/normal.ts';
import type { FeatureSpec } from '../../../scenario/parts.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { ColdStart } from '../../cold-start.ts';
import { Follows } from '../../follows.ts';
import { FormingFlaws, type Outside, type Wall, type Window } from '../../forming-flaws.ts';
import { FromSheet } from '../../from-sheet.ts';
import { Form, type Sheet, THICKNESS } from '../../operations/form.ts';
import { THICKNESS as SHEET_THICKNESS } from '../../stock.ts';
import { correlateLots } from '../correlate.ts';
import type { Plan } from '../plan.ts';
import { counted, sourceParts } from './source.ts';

type Spec = SpecOf<'form'> & { readonly name: string };

/** Place of a setting, or of the thickness, among the deviations of a cycle. */
const placeOf = (name: string, { settings = [] }: Spec): number =>
  name === 'thickness' ? THICKNESS : THICKNESS + 1 + settings.findIndex((setting) => setting.name === name);

function followsOf({ gains, curvatures, interactions }: FeatureSpec, spec: Spec): Follows {
  return new Follows(
    Object.entries(gains ?? {}).map(([name, { value }]) => ({ of: placeOf(name, spec), gain: value })),
    [
      ...Object.entries(curvatures ?? {}).map(([name, { value }]) => {
        const place = placeOf(name, spec);
        return { one: place, other: place, gain: value };
      }),
      ...(interactions ?? []).map(({ of, gain }) => ({
        one: placeOf(of[0], spec),
        other: placeOf(of[1], spec),
        gain: gain.value,
      })),
    ],
  );
}

function flawsOf(spec: Spec, { line, next }: Plan): FormingFlaws | null {
  if (!spec.window && !spec.wall) return null;
  const outside = (word: 'scrap' | 'pass'): Outside => (word === 'scrap' ? null : line.flaw);
  const at = spec.window ? placeOf(spec.window.setting, spec) : THICKNESS;
  const target = spec.settings?.find(({ name }) => name === spec.window?.setting)?.target.value ?? 0;
  const window: Window | null = spec.window
    ? {
        of: at,
        lowest: (spec.window.from?.value ?? Number.NEGATIVE_INFINITY) - target,
        highest: (spec.window.to?.value ?? Number.POSITIVE_INFINITY) - target,
        outside: outside(spec.window.outside),
      }
    : null;
  const wall: Wall | null = spec.wall
    ? {
        drawRatio: spec.wall.drawRatio,
        least: spec.wall.least,
        thinning: spec.wall.thinning?.value ?? 0,
        of: at,
        outside: outside(spec.wall.outside),
      }
    : null;
  const flaws = new FormingFlaws(window, wall, line.tally, {
    next: next.get(spec.name)!,
    incomplete: line.scrapFor(spec.name, 'incomplete'),
    webbed: line.scrapFor(spec.name, 'webbed'),
    thin: line.scrapFor(spec.name, 'thin'),
  });
  line.formingFlaws.set(spec.name, flaws);
  return flaws;
}

/** A kind of sheet that the station may form, be it one that stands in for its own. */
function sheetOf(name: string, spec: Spec, { line, scenario }: Plan): Sheet {
  const find = (name: string) => scenario.stocks.find((stock) => stock.name === name)!;
  const { thickness, settings: targets = [], shifts = [] } = find(name);
  const standard = name === spec.takes;
  const stock = line.stocks.get(name)!;
  const moves = (spec.settings ?? []).map(({ name, target }) => {
    const own = targets.find((setting) => setting.name === name);
    return own ? own.target.value - target.value : 0;
  });
  const features = [...line.features.values()].map(
    (feature): FromSheet =>
      standard
        ? feature.standard
        : new FromSheet(feature.spec, stock, shifts.find(({ name }) => name === feature.spec.name)?.by),
  );
  // All features of a line are of its one part.
  if (!standard) for (const part of scenario.parts) correlateLots(part, features);
  return {
    thickness: thickness
      ? {
          nominal: thickness.nominal,
          more: thickness.nominal - find(spec.takes).thickness!.nominal,
          variation: stock.variation(SHEET_THICKNESS, thickness.lotSd, thickness.ownSd),
        }
      : null,
    moves: standard || moves.every((move) => move === 0) ? null : moves,
    features,
  };
}

export function form(spec: Spec, plan: Plan): Form {
  const { settings, features, streams } = plan.line;
  const on = sourceParts(spec, spec.takes, plan);
  const made = new Form(on, {
    perSheet: spec.perSheet,
    sheets: on.supplies.map(({ stock }) => sheetOf(stock.name, spec, plan)),
    times: [spec.heating, spec.cooling].filter((time) => time !== undefined),
    settings: (spec.settings ?? []).map(({ name, cycleSd, whenCold }) => ({
      ...settings.get(name)!,
      cycleSd: cycleSd?.value ?? 0,
      z: standardNormal(streams.of(`setting/${name}/cycle`)),
      cold: whenCold ? new ColdStart({ ...whenCold, by: whenCold.by.value }, spec.machines) : null,
    })),
    features: [...features.values()].map((feature) => ({
      feature,
      follows: feature.spec.madeAt === spec.name ? followsOf(feature.spec, spec) : null,
    })),
    flaws: flawsOf(spec, plan),
  });
  return counted(made, spec, plan);
}
