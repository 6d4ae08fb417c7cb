import { describe, expect, it } from 'vitest';
import { gaugedCell } from '../../line/small-line.ts';
import { expectEach, readings } from '../disturbed-line.ts';

/** A tray whose tab of 100 mm is cut 5 s after its sheet was loaded; own deviations of 0.1 mm. */
const TRIMMED = `
stock:
  sheet: { unlimited: true }
parts:
  tray:
    features:
      tab: { nominal: 100 mm, made-at: trimming, own-sd: 0.1 mm, sheet-sd: 0.3 mm }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: trimming }
  trimming: { does: trim, buffer: 5, cycle: 5 s, to: gauging }
  gauging: { does: gauge, buffer: 5, cycle: 1 s, every: 1, measures: { tab: { repeatability: 0 mm } }, off-limits: pass, to: good }
`;

describe('a disturbed feature', () => {
  const wide = gaugedCell({ rim: 'own-sd: 0.1 mm, sheet-sd: 0.3 mm' });

  it('is made larger by exactly so much while it lasts, where it is formed', () => {
    const calm = readings('', 91, wide);
    const seen = readings(
      '  off: { disturbs: feature, feature: rim, by: 0.25 mm, at: 25 s, for: 30 s }',
      91,
      wide,
    );
    // In force from 25 to 55 s: sheets loaded at 30, 40 and 50.
    const shift = [0, 0, 0, 0.25, 0.25, 0.25, 0, 0, 0];
    expectEach(
      seen,
      shift.map((by, i) => calm[i]! + by),
    );
  });

  it('builds up over its ramp and fades after its end', () => {
    const seen = readings(
      '  off: { disturbs: feature, feature: rim, by: 1 mm, at: 10 s, ramp: 40 s, for: 50 s, fades: 20 s }',
      101,
    );
    // Loaded at 10 (k - 1): a quarter more each time up to 50 s, whole until 60 s, gone at 80 s.
    expect(seen).toEqual([0, 0, 0.25, 0.5, 0.75, 1, 1, 0.5, 0, 0]);
  });

  it('has its own deviation scaled, not what parts of a sheet share', () => {
    const own = readings('', 201, gaugedCell({ rim: 'own-sd: 0.1 mm' }));
    const calm = readings('', 201, wide);
    const seen = readings(
      '  wide: { disturbs: feature, feature: rim, spread: 300 %, at: 0 s, for: 1 h }',
      201,
      wide,
    );
    // The draws of a part are its own: those of the sheet come from another stream.
    expectEach(
      seen,
      calm.map((reading, i) => reading + 2 * own[i]!),
    );
    expect(Math.max(...own.map(Math.abs))).toBeGreaterThan(0.05);
  });

  it('is disturbed as it is cut, where it is cut', () => {
    const calm = readings('', 97, TRIMMED);
    const own = readings('', 97, TRIMMED.replace(', sheet-sd: 0.3 mm', ''));
    const seen = readings(
      '  off: { disturbs: feature, feature: tab, by: 0.25 mm, spread: 200 %, at: 34 s, for: 20 s }',
      97,
      TRIMMED,
    );
    // Cut at 15, 25, 35, 45, 55, ...: those of 35 and 45 are off, although formed before.
    const hit = [0, 0, 1, 1, 0, 0, 0, 0, 0];
    expectEach(
      seen,
      hit.map((is, i) => calm[i]! + is * (0.25 + own[i]!)),
    );
  });
});
