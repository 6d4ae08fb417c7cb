import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { spreadOf } from '../../src/experiment/spread.ts';
import { targetsMet } from '../../src/experiment/targets.ts';
import { MEASURES } from '../../src/line/measures.ts';
import { comparisonJsonSchema } from '../../src/report/comparison-schema.ts';
import { comparisonJson } from '../../src/report/json.ts';
import { sampleLooked } from './looked-sample.ts';
import { sampleOutcomes } from './sample.ts';
import { sampleTwins } from './twins-sample.ts';

const reports = new URL('../../reports/', import.meta.url);
const ajv = () => new Ajv2020({ strict: true, strictTypes: false });
const closed = ajv().compile(comparisonJsonSchema(true));
const open = ajv().compile(comparisonJsonSchema());
const shipped = readdirSync(reports, { withFileTypes: true })
  // Quick looks beside them are not shipped.
  .filter((entry) => entry.isDirectory() && !/-seeds$|-with-|-only-/.test(entry.name))
  .map(({ name }) => name)
  .filter((name) => existsSync(new URL(`${name}/comparison.json`, reports)));
const sha256 = 'ab'.repeat(32);

/** A document with everything that may stand in one. */
function full(): Record<string, unknown> {
  const outcomes = sampleOutcomes().map((one) => ({ ...one, did: { 'change tool': 3 } }));
  const policies = [...new Set(outcomes.map(({ policy }) => policy))];
  const document = comparisonJson({
    comparison: compare(policies, outcomes),
    outcomes,
    twins: sampleTwins(2),
    spread: spreadOf(policies, outcomes),
    causes: {
      scrapped: [
        { station: 'assembly', cause: 'loose', rows: [{ policy: 'rework', parts: 3, perThousand: 0.4 }] },
      ],
      misfits: [
        {
          ...{ station: 'assembly', hole: 'bore', shaft: 'lid.pin' },
          rows: [{ policy: 'rework', tight: 0, loose: 0.4 }],
        },
      ],
    },
    looked: sampleLooked(),
    targets: targetsMet([{ measure: MEASURES[0], limit: 42 }], policies, outcomes),
    version: '0.1.0',
    command: ['compare', 'a.yaml', '--with', 'b.yaml'],
    scenario: { file: 'a.yaml', title: 'A', sha256 },
    joined: [{ file: 'b.yaml', text: '', sha256, title: 'B', about: '', helps: null, hurts: null }],
    modules: [{ path: 'c.ts', sha256, code: '', name: 'rework' }],
    csvSha256: { 'runs.csv': sha256 },
  });
  return JSON.parse(JSON.stringify(document));
}

describe('comparisonJsonSchema', () => {
  it('is what reports/comparison.schema.json holds', () => {
    const written = readFileSync(new URL('comparison.schema.json', reports), 'utf8');
    const now = `${JSON.stringify(comparisonJsonSchema(), null, 2)}\n`;
    expect(written === now, 'the format of comparison.json has changed: run "npm run schema"').toBe(true);
  });

  it('is shipped with reports to check it by', () => {
    expect(shipped).toContain('tray-cell');
  });

  it.each(shipped)('names all that stands in the shipped report %s', (name) => {
    closed(JSON.parse(readFileSync(new URL(`${name}/comparison.json`, reports), 'utf8')));
    expect(closed.errors).toBeNull();
  });

  it('names all that may stand in a document', () => {
    closed(full());
    expect(closed.errors).toBeNull();
  });

  it('names what stands in one with a bound', () => {
    const shares = {
      mean: 0.5,
      lower: null,
      upper: null,
      runs: 1,
      level: 0.95,
      method: 'one run, no interval',
    };
    const bound = { policy: 'a', recoverable_per_h: shares, recovered: [{ policy: 'b', ...shares }] };
    closed({ ...full(), bound });
    expect(closed.errors).toBeNull();
    expect(closed({ ...full(), bound: { policy: 'a', recoverable_per_h: null, recovered: null } })).toBe(
      true,
    );
    expect(closed({ ...full(), bound: { policy: 'a' } })).toBe(false);
  });

  it.each([
    ['another format', (it: Record<string, unknown>) => ({ ...it, format: 'mendline comparison 3' })],
    ['no version', ({ version: _, ...rest }: Record<string, unknown>) => rest],
    [
      'a verdict of its own',
      (it: Record<string, unknown>) => JSON.parse(JSON.stringify(it).replace('"better"', '"best"')),
    ],
    ['a number as text', (it: Record<string, unknown>) => ({ ...it, level: '0.95' })],
    [
      'a hash cut short',
      (it: Record<string, unknown>) => JSON.parse(JSON.stringify(it).replaceAll(sha256, 'ab')),
    ],
    ['half a seed', (it: Record<string, unknown>) => ({ ...it, seeds: [1.5] })],
  ])('refuses %s', (_, changed) => {
    expect(open(changed(full()))).toBe(false);
  });

  it('takes what a later version adds, when open alone', () => {
    const later = { ...full(), added: 1 };
    expect([open(later), closed(later)]).toEqual([true, false]);
  });
});
