import { expect, it } from 'vitest';
import { Switching } from '../../src/standards/iso-2859-switching.ts';

/** The inspection in force after each lot, N or T, for lots accepted (+) or not (-). */
function after(lots: string): string {
  const switching = new Switching();
  return [...lots]
    .map((lot) => {
      switching.tell(lot === '+');
      return switching.severity === 'normal' ? 'N' : 'T';
    })
    .join('');
}

// MIL-STD-105E, 4.7.1 and 4.7.2, worded alike in ISO 2859-1:1999, clause 9: 2 out of 2, 3, 4 or 5 consecutive lots not accepted
// bring tightened inspection, 5 consecutive lots accepted on it bring normal inspection back.
it.each([
  ['--', 'NT'],
  ['-+++-', 'NNNNT'],
  ['-++++-', 'NNNNNN'],
  ['-++++-+-', 'NNNNNNNT'],
  ['--+++++', 'NTTTTTN'],
  ['--++++-+++++', 'NTTTTTTTTTTN'],
  // Lots before or on tightened inspection do not count against normal inspection afterwards.
  ['--+++++-+', 'NTTTTTNNN'],
  ['--+++++--', 'NTTTTTNNT'],
  // Five lots not accepted on tightened inspection: the standard stops, the tool stays with it.
  ['-------+', 'NTTTTTTT'],
])('lots %s lead to %s', (lots, severities) => {
  expect(after(lots)).toBe(severities);
});
