import { expect, it } from 'vitest';
import { Streams } from '../../src/kernel/streams.ts';
import { lotsAccepted } from '../../src/standards/iso-2859-long-run.ts';
import { Switching } from '../../src/standards/iso-2859-switching.ts';
import { expectMean } from '../outside-checks/by-simulation.ts';

// By playing the switching rules themselves.
it.each([
  [0.95, 0.85],
  [0.8, 0.6],
  [0.5, 0.3],
])('lots accepted with chances %d and %d, switching as the standard says', (normal, tightened) => {
  const shares = Array.from({ length: 30 }, (_, seed) => {
    const luck = new Streams(seed).of('lots');
    const switching = new Switching();
    let accepted = 0;
    for (let lot = 0; lot < 20_000; lot++) {
      const accepts = luck() < (switching.severity === 'normal' ? normal : tightened);
      if (accepts) accepted++;
      switching.tell(accepts);
    }
    return accepted / 20_000;
  });
  expectMean(shares, lotsAccepted(normal, tightened), 0.01);
});

// Without any rejection nothing switches; where nothing is accepted tightened inspection stays. Where half of the lots pass on
// normal inspection: a first rejection takes 2 lots, and each further one 2 more; it comes within 4 lots of the one before
// with chance 15/16, so 1 + 16/15 of them end normal inspection after 2 + 32/15 lots. All pass on tightened: 5 lots.
it('at the ends', () => {
  expect(lotsAccepted(1, 0.9)).toBe(1);
  expect(lotsAccepted(0.5, 0)).toBe(0);
  const long = 2 + 32 / 15;
  expect(lotsAccepted(0.5, 1)).toBeCloseTo((0.5 * long + 5) / (long + 5), 12);
});
