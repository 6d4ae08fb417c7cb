import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { selectionJson } from '../../../src/report/selection/selection-json.ts';
import { selectionJsonSchema } from '../../../src/report/selection/selection-schema.ts';
import { sampleSelection } from './sample.ts';

const sha256 = 'ab'.repeat(32);
const SOURCE = {
  version: '0.1.0',
  command: ['compare', 'a.yaml', '--until-decided'],
  scenario: { file: 'a.yaml', title: 'A', sha256 },
  joined: [{ file: 'b.yaml', text: '', sha256, title: 'B', about: '', helps: null, hurts: null }],
  modules: [{ path: 'c.ts', sha256, code: '', name: 'rework' }],
  csvSha256: { 'runs.csv': sha256 },
};
const closed = new Ajv2020({ strict: true, strictTypes: false }).compile(selectionJsonSchema(true));
const documentOf = (...given: Parameters<typeof sampleSelection>) =>
  JSON.parse(JSON.stringify(selectionJson(sampleSelection(...given), SOURCE)));

describe('selection.json', () => {
  it('is of the format that reports/selection.schema.json holds', () => {
    const written = readFileSync(new URL('../../../reports/selection.schema.json', import.meta.url), 'utf8');
    const now = `${JSON.stringify(selectionJsonSchema(), null, 2)}\n`;
    expect(written === now, 'the format of selection.json has changed: run "npm run schema"').toBe(true);
  });

  it.each([{}, { procedure: 'two-stage' }, { most: 6, worth: 0.3 }] as const)(
    'keeps to it, with %j',
    (changed) => {
      closed(documentOf(changed));
      expect(closed.errors).toBeNull();
    },
  );

  it('names who is chosen, and no one where it is undecided', () => {
    expect(documentOf()).toMatchObject({ chosen: 'retune', ahead: 'retune', ended: 'one left' });
    expect(documentOf({ most: 6, worth: 0.3 })).toMatchObject({
      chosen: null,
      ahead: 'match',
      ended: 'most runs',
    });
  });

  it('holds the runs that counted, and nothing that is no number', () => {
    const { standing, outcomes } = sampleSelection();
    const document = documentOf();
    expect(document.runs).toHaveLength(outcomes.length);
    expect(document.left_out).toHaveLength(standing.out.length);
    expect(document.rows.map(({ runs }: { runs: number }) => runs).sort()).toEqual(
      [...standing.out.map(({ runs }) => runs), standing.runs].sort(),
    );
  });
});
