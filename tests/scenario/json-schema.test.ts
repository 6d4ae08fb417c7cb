import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { jsonSchema, supplementJsonSchema } from '../../src/scenario/json-schema.ts';
import { EVERY } from '../disturbance/every-disturbance.ts';
import { FLOW } from './flow-sample.ts';
import { changed, SOUND } from './sample.ts';

const folder = new URL('../../scenarios/', import.meta.url);
const validating = (schema: object) => new Ajv2020({ strict: true, strictTypes: false }).compile(schema);
const validates = validating(jsonSchema());
const scenarios = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

/** Every property with its description, by name; a shared definition may hold it. */
function described(node: unknown, found = new Map<string, string[]>()): Map<string, string[]> {
  if (typeof node !== 'object' || node === null) return found;
  const { properties } = node as { properties?: Record<string, { description?: string }> };
  for (const [name, { description }] of Object.entries(properties ?? {})) {
    if (typeof description === 'string') found.set(name, [...(found.get(name) ?? []), description]);
  }
  for (const value of Object.values(node)) described(value, found);
  return found;
}

describe('jsonSchema', () => {
  it('is what scenarios/scenario.schema.json holds', () => {
    const written = readFileSync(new URL('scenario.schema.json', folder), 'utf8');
    const now = `${JSON.stringify(jsonSchema(), null, 2)}\n`;
    expect(written === now, 'the scenario format has changed: run "npm run schema"').toBe(true);
  });

  it('names itself, and its draft first', () => {
    expect(Object.keys(jsonSchema()).slice(0, 2)).toEqual(['$schema', 'title']);
    expect(jsonSchema().title).toBe('mendline scenario');
  });

  it('is shipped with scenarios to check it by', () => {
    expect(scenarios).toContain('tray-cell.yaml');
  });

  it.each(scenarios)('takes the shipped scenario %s', (name) => {
    validates(parse(readFileSync(new URL(name, folder), 'utf8')));
    expect(validates.errors).toBeNull();
  });

  it.each([SOUND, FLOW, EVERY])('takes the scenarios with every kind of entry', (text) => {
    validates(parse(text));
    expect(validates.errors).toBeNull();
  });

  it.each([
    ['an unknown key', 'title: A sound cell', 'title: A sound cell\ntile: again'],
    ['a misspelt key of a station', 'makes: tray', 'maks: tray'],
    ['a time without its unit', 'cycle: 12 s', 'cycle: 12'],
    ['a time with the unit of a length', 'cycle: 12 s', 'cycle: 12 mm'],
    ['a length without its unit', 'nominal: 120 mm', 'nominal: 120'],
    ['an unknown distribution', 'cycle: 12 s', 'cycle: { distribution: gama, mean: 1 s, cv: 1 % }'],
    ['an unknown operation', 'does: form', 'does: from'],
    ['no seeds', 'seeds: 4', 'seeds: 0'],
    ['another version', 'mendline: 1', 'mendline: 2'],
  ])('refuses %s', (_, from, to) => {
    expect(validates(parse(changed(from, to)))).toBe(false);
  });

  it.each([
    ['a name for a list of days', 'days: [sat]', 'days: sat'],
    ['a crew of nobody', 'number: 2,', 'number: 0,'],
    ['an unknown way of choosing a route', 'by: state', 'by: luck'],
    ['a single breakdown without a name', '    breakdowns:\n', '    breakdown:\n'],
    ['a cycle of arrivals', 'does: arrive\n    every', 'does: arrive\n    cycle'],
  ])('refuses %s', (_, from, to) => {
    expect(validates(parse(changed(from, to, FLOW)))).toBe(false);
  });

  it('takes both letters that look like a micro sign', () => {
    for (const letter of ['\u00b5', '\u03bc']) {
      expect(validates(parse(changed('cavities: [0.02 mm', `cavities: [20 ${letter}m`)))).toBe(true);
    }
  });

  it('describes its keys, so that an editor can explain them', () => {
    const found = described(jsonSchema());
    for (const key of ['title', 'about', 'cycle', 'lead-time', 'tolerance', 'per-sheet', 'misfit', 'at']) {
      expect(found.get(key), key).toBeDefined();
    }
    expect(
      found.get('warm-up')?.some((text) => text.startsWith('time that passes before anything is counted')),
    ).toBe(true);
    expect(JSON.stringify(jsonSchema())).toContain('a time, such as 42 s');
  });
});

describe('supplementJsonSchema', () => {
  const joins = validating(supplementJsonSchema());
  const policies = readdirSync(new URL('policies/', folder)).filter((name) => name.endsWith('.yaml'));

  it('is what scenarios/supplement.schema.json holds', () => {
    const written = readFileSync(new URL('supplement.schema.json', folder), 'utf8');
    const now = `${JSON.stringify(supplementJsonSchema(), null, 2)}\n`;
    expect(written === now, 'the scenario format has changed: run "npm run schema"').toBe(true);
  });

  it.each(policies)('takes the shipped supplement %s, which names it', (name) => {
    const text = readFileSync(new URL(`policies/${name}`, folder), 'utf8');
    joins(parse(text));
    expect(joins.errors).toBeNull();
    expect(text).toMatch(/^# yaml-language-server: \$schema=\.\.\/supplement\.schema\.json\n/);
  });

  it('refuses a scenario, an unknown key and a misspelt response', () => {
    const sound =
      'mendline: 1\ntitle: a\nabout: b\npolicies: { wait: [{ do: inspect, at: gauging, every: 1 }] }\n';
    expect(joins(parse(sound))).toBe(true);
    for (const wrong of [SOUND, `${sound}helpz: c\n`, sound.replace('inspect', 'inspct')])
      expect(joins(parse(wrong))).toBe(false);
  });
});
