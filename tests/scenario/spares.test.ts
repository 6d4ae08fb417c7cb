import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { refuses, SOUND } from './sample.ts';

describe('the spare of a breakdown', () => {
  it('is a stock', () => {
    const assembly = parseScenario(SOUND, 'cell.yaml').stations.find(({ name }) => name === 'assembly')!;
    expect(assembly.breakdowns[0]).toMatchObject({ name: 'torn', spare: 'film' });
  });

  refuses([
    ['spare: film', 'spare: ¤flim', '"flim" is no stock; did you mean "film"?'],
    ['spare: film', '¤spares: film', 'did you mean "spare"?'],
  ]);
});

describe('a stock that nothing takes', () => {
  refuses([
    [
      '  film: { unlimited: true }',
      '  film: { unlimited: true }\n  element: ¤{ on-hand: 1 }',
      'nothing takes it; name it under "takes" of a station or "spare" of a breakdown',
    ],
  ]);
});
