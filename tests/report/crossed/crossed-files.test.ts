import { describe, expect, it } from 'vitest';
import { crossed } from '../../../src/experiment/crossed.ts';
import { crossedCsv } from '../../../src/report/crossed/crossed-csv.ts';
import { crossedJson } from '../../../src/report/crossed/crossed-json.ts';
import { CASES, POLICIES, SEVERITIES, sampleCrossed, sampleRuns } from './sample.ts';

const runs = sampleRuns(3);

describe('the CSV of a crossed experiment', () => {
  it('has a row a case, severity, policy and seed', () => {
    const [head, ...rows] = crossedCsv(runs).trimEnd().split('\r\n');
    expect(head).toMatch(/^case,severity,policy,seed,throughput_per_h,scrap_rate,/);
    expect(rows).toHaveLength(CASES.length * SEVERITIES.length * POLICIES.length * 3);
    expect(rows[0]).toMatch(/^"a <stop> & ""more""",0,carry on,1,[\d.]+,,0\.5,/);
  });
});

describe('the JSON of a crossed experiment', () => {
  const scenario = { file: 'cell.yaml', title: 'T', sha256: 'abc' };
  const document = crossedJson({
    crossed: sampleCrossed(3),
    runs,
    version: '1',
    command: ['cross', 'a.yaml'],
    scenario,
    modules: [],
  });

  it('has all cells with every policy, and all runs', () => {
    expect(document.cases.map((one) => one.case)).toEqual(CASES);
    expect(document.cases[0]!.cells.map(({ severity }) => severity)).toEqual(SEVERITIES);
    expect(document.cases[0]!.cells[0]!.rows.map(({ policy }) => policy)).toEqual(POLICIES);
    expect(document.runs).toHaveLength(runs.length);
    expect(document.seeds).toEqual([1, 2, 3]);
    expect(document.by).toMatchObject({ key: 'throughput_per_h', unit: '1/h', better: 'higher' });
    expect(JSON.stringify(document)).not.toContain('undefined');
  });

  it('gives back the same answer from its runs', () => {
    const crossing = { cases: CASES, severities: SEVERITIES, policies: POLICIES };
    const { found } = crossed(crossing, runs, 'throughput_per_h');
    expect(document.cases.map(({ changes }) => changes)).toEqual(found.map(({ changes }) => changes));
    expect(document.cases[0]!.first).toBe('carry on');
  });

  it('names policy modules where there are any', () => {
    const modules = [{ path: 'own.ts', sha256: 'def', code: '', name: 'own' }];
    const with1 = crossedJson({
      crossed: sampleCrossed(3),
      runs,
      version: '1',
      command: ['cross', 'a.yaml'],
      scenario,
      modules,
    });
    expect(with1.policy_modules).toEqual([{ policy: 'own', file: 'own.ts', sha256: 'def' }]);
    expect(document).not.toHaveProperty('policy_modules');
  });
});
