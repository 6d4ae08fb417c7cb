import { expect, it } from 'vitest';
import { explain } from '../../src/experiment/explanation.ts';
import { explainJson } from '../../src/report/explain-json.ts';
import { cell } from '../line/prediction/cell.ts';

it('gives every value unrounded with its unit in its key', () => {
  const explanation = explain(cell({ rim: 'tolerance: 3 mm, own-sd: 1 mm' }), 2);
  const document = JSON.parse(
    JSON.stringify(explainJson({ explanation, file: 'cell.yaml', title: 'cell', sha256: 'ab' })),
  );
  expect(Object.keys(document)).toEqual([
    'format', 'scenario', 'seeds', 'level', 'deciding_level', 'comparisons', 'differing', 'forming', 'features', 'assemblies',
    'gauges', 'marks', 'readers',
  ]); // biome-ignore format: one line reads better
  expect(document).toMatchObject({ format: 'mendline explain 1', seeds: [1, 2], level: 0.95 });
  expect(document.features[0]).toMatchObject({
    feature: 'rim',
    made_at: 'forming',
    aim_mm: 10,
    lower_mm: 7,
    upper_mm: 13,
    sd_mm: { predicted: 1, runs: 2 },
    pp: 1,
    variance: [{ from: 'own', variance_mm2: 1 }],
  });
  const { simulated, lower, upper } = document.features[0].mean_mm;
  expect(simulated).toBe(explanation.features[0]!.mean.simulated!.value);
  expect(lower).toBeLessThan(simulated);
  expect(upper).toBeGreaterThan(simulated);
  expect(document.assemblies[0].pairs[0]).toMatchObject({ hole: 'frame.groove', shaft: 'rim', least_mm: 0 });
  expect(document.assemblies[0].all_fit_share.predicted).toBeCloseTo(0.341345, 5);
  expect(document.gauges[0].features[0].bad_passed_share).toMatchObject({ predicted: 0, differs: false });
  expect(document.readers[0].unread_share.predicted).toBeCloseTo(0.1, 12);
});
