import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, refuses } from './sample.ts';

const MISFIT = '    misfit: bench\n';
const with_ = (keys: string) => `${MISFIT}    ${keys}\n`;

describe('forcing', () => {
  it('is read into newtons, newtons per millimetre, shares and seconds', () => {
    const text = changed(
      MISFIT,
      with_('forcing: { stiffness: 0.4 kN/mm, limit: 0.12 kN, damages: 4 %, takes: 3 s }'),
    );
    const station = parseScenario(text, 'cell.yaml').stations.find(({ does }) => does === 'assemble');
    expect(station).toMatchObject({ forcing: { stiffness: 400, limit: 120, damages: 0.04, takes: 3 } });
  });

  it('damages nothing and takes no time where nothing is said', () => {
    const text = changed(MISFIT, with_('forcing: { stiffness: 400 N/mm, limit: 120 N }'));
    const station = parseScenario(text, 'cell.yaml').stations.find(({ does }) => does === 'assemble');
    expect(station).toMatchObject({ forcing: { damages: 0, takes: 0 } });
  });

  refuses([
    [MISFIT, with_('forcing: { stiffness: ¤400 N/s, limit: 1 N }'), 'expected a force per length above zero'],
    [MISFIT, with_('forcing: { stiffness: ¤-4 N/mm, limit: 1 N }'), 'expected a force per length above zero'],
    [MISFIT, with_('forcing: { stiffness: ¤400 mm/mm, limit: 1 N }'), 'expected a force per something'],
    [MISFIT, with_('forcing: { stiffness: 400 N/mm, limit: ¤1 mm }'), 'expected a force with its unit'],
    [MISFIT, with_('forcing: { stiffness: 400 N/mm, limit: ¤0 N }'), 'a force here is above zero'],
    [MISFIT, with_('forcing: ¤{ stiffness: 400 N/mm }'), '"limit" is missing'],
    [MISFIT, with_('forcing: { stiffness: 400 N/mm, limit: 1 N, damages: ¤101 % }'), 'from 0 % to 100 %'],
    [
      MISFIT,
      with_('tight: ¤bnch'),
      '"bnch" is no place for rejects (scrap or a rework station); did you mean "bench"?',
    ],
    [MISFIT, with_('loose: ¤packing'), 'expected one that does rework'],
  ]);
});
