import { z } from 'zod';
import { disturbance } from './disturbances.ts';
import { label, name, named } from './fields.ts';
import { response } from './responses.ts';
import { sizing } from './sizings.ts';

/** The sections that may stand in a scenario or in a supplement, which is joined to it: what is crossed with a line. */
export const sections = {
  disturbances: named(disturbance).describe('what goes wrong, and when'),
  cases: z
    .record(label, z.array(name, { error: 'expected a list of disturbances; [] is the undisturbed line' }), {
      error: 'expected a mapping from names of cases to lists of disturbances',
    })
    .transform((entries) => Object.entries(entries).map(([name, disturbances]) => ({ name, disturbances })))
    .describe('disturbances that come together, by name; left out, the one case is all of them'),
  policies: z
    .record(label, z.array(response, { error: 'expected a list of responses; [] does nothing' }), {
      error: 'expected a mapping from policy names to lists of responses',
    })
    .transform((entries) => Object.entries(entries).map(([name, responses]) => ({ name, responses })))
    .describe('named lists of responses; the first policy is the one the others are compared with'),
  sizings: z
    .record(label, sizing, { error: 'expected a mapping from names to sizings' })
    .transform((entries) => Object.entries(entries).map(([name, own]) => ({ name, ...own })))
    .describe('questions of how much is enough at least cost, for "size"'),
};

/** What one entry of each is. */
export const ENTRY_WORDS: Readonly<Record<keyof typeof sections, string>> = {
  disturbances: 'a disturbance',
  cases: 'a case',
  policies: 'a policy',
  sizings: 'a sizing',
};

export const SECTIONS = Object.keys(sections) as (keyof typeof sections)[];
