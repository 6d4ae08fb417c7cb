import type { Scenario } from '../../scenario/scenario.ts';
import type { Cases, Open, Source } from './source.ts';
import { cavityCases } from './sources/cavities.ts';
import { curvedCases } from './sources/curved.ts';
import { driftCases } from './sources/drift.ts';
import { followedSources } from './sources/followed.ts';
import { mateSources } from './sources/mates.ts';
import { ownSources } from './sources/own.ts';
import { sensorBiasCases } from './sources/sensor-bias.ts';
import { sheetSources } from './sources/sheet.ts';
import { shrinkageSources } from './sources/shrinkage.ts';
import { wearCases, wearOpen } from './sources/wear.ts';

const SOURCES: readonly ((scenario: Scenario) => Source[])[] = [
  ownSources,
  sheetSources,
  followedSources,
  shrinkageSources,
  mateSources,
];

const CASES: readonly ((scenario: Scenario) => Cases[])[] = [
  cavityCases,
  sensorBiasCases,
  driftCases,
  curvedCases,
  wearCases,
];

/** Every normal source of variation of an undisturbed line. */
export const sourcesOf = (scenario: Scenario): Source[] => SOURCES.flatMap((of) => of(scenario));

/** Everything that puts a part into one of several cases. */
export const casesOf = (scenario: Scenario): Cases[] => CASES.flatMap((of) => of(scenario));

/** Everything that no closed form is known for here. */
export const openOf = (scenario: Scenario): Open[] => wearOpen(scenario);
