import type { Scenario } from '../../scenario/scenario.ts';
import type { Cases, Source } from './source.ts';
import { cavityCases } from './sources/cavities.ts';
import { mateSources } from './sources/mates.ts';
import { ownSources } from './sources/own.ts';
import { settingSources } from './sources/settings.ts';
import { sheetSources } from './sources/sheet.ts';
import { shrinkageSources } from './sources/shrinkage.ts';
import { thicknessSources } from './sources/thickness.ts';

const SOURCES: readonly ((scenario: Scenario) => Source[])[] = [
  ownSources,
  sheetSources,
  settingSources,
  thicknessSources,
  shrinkageSources,
  mateSources,
];

const CASES: readonly ((scenario: Scenario) => Cases[])[] = [cavityCases];

/** Every normal source of variation of an undisturbed line. */
export const sourcesOf = (scenario: Scenario): Source[] => SOURCES.flatMap((of) => of(scenario));

/** Everything that puts a part into one of several cases. */
export const casesOf = (scenario: Scenario): Cases[] => CASES.flatMap((of) => of(scenario));
