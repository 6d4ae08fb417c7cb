import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused } from './sample.ts';

/** The sound cell with these keys of the rim and of its reading. */
function warm(expands: string, reading: string) {
  const read = changed('rim: { repeatability: 0.02 mm }', `rim: { repeatability: 0.02 mm${reading} }`);
  return changed('        tolerance: 0.2 mm\n', `        tolerance: 0.2 mm\n${expands}`, read);
}
const expands = (given: string) => `        expands: ${given}\n`;
const SOUND_EXPANSION = expands('0.07 mm/m/°C');

describe('what a feature expands by', () => {
  it('is a share of its length per degree, whichever unit is divided by first', () => {
    for (const given of ['0.07 mm/m/°C', '0.07 mm/°C/m', '70 um/m/K', '7e-5 in/in/°C']) {
      const { parts } = parseScenario(warm(expands(given), ', warm-by: 5 °C'), 'cell.yaml');
      expect(parts[0]!.features[0]!.expands).toBeCloseTo(7e-5, 15);
    }
  });

  it.each([
    ['¤0.07 mm/m', '"0.07 mm/m": expected a length per two things, such as 0.07 mm/m/°C'],
    ['¤7e-5', 'expected a length per two things, such as 0.07 mm/m/°C'],
    ['¤0.07 mm/m/kPa', 'expected a length per length and temperature, such as 0.07 mm/m/°C'],
    ['¤0.07 mm/°C²', 'expected a length per length and temperature'],
    ['¤0.07 s/m/°C', 'expected a length per two things'],
    ['¤-0.07 mm/m/°C', 'what is warmer is longer, so expected more than zero'],
    ['¤0 mm/m/°C', 'what is warmer is longer, so expected more than zero'],
  ])('is not %s', (given, message) => {
    expectRefused(warm(expands(given), ', warm-by: 5 °C'), message);
  });

  it('is for gauges that read it warm', () => {
    const message = 'no gauge reads "rim" warm; give a reading of it "warm-by", or take "expands" out';
    expectRefused(warm(expands('¤0.07 mm/m/°C'), ''), message);
    const tab = '      tab: { repeatability: 0 mm, warm-by: ¤5 °C }\n    off-limits: pass\n';
    expectRefused(
      changed('    off-limits: pass\n', tab, warm(expands('¤0.07 mm/m/°C'), '')),
      message,
      'how "tab" grows by warmth is not known',
    );
  });

  it('is not blamed where the gauge that may read it warm has problems of its own', () => {
    expectRefused(warm(SOUND_EXPANSION, ', warm-by: ¤5'), '5 has no unit');
  });
});

describe('what a reading is warm by', () => {
  it('needs a feature that is known to expand', () => {
    expectRefused(
      warm('', ', warm-by: ¤5 °C'),
      'how "rim" grows by warmth is not known; give it "expands", such as 0.07 mm/m/°C, or take "warm-by" out',
    );
  });

  it('is a difference of temperature', () => {
    expectRefused(
      warm(SOUND_EXPANSION, ', warm-by: ¤5 mm'),
      '"5 mm": expected a difference of temperature with its unit (°C, C, K), such as 5 °C',
    );
  });

  it.each(['-5 °C', '0 °C', '5 K'])('may be %s', (given) => {
    expect(() => parseScenario(warm(SOUND_EXPANSION, `, warm-by: ${given}`), 'cell.yaml')).not.toThrow();
  });
});
