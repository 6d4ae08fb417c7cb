import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { selfCheck } from '../../src/line/self-check.ts';
import { small } from '../line/small-line.ts';

/**
 * Trays are begun at 0, 10, 20, ... and come 10 s later. The one frame is taken at 10 s; nine come at 55 s. Assembly takes
 * 6 s, and 4 s to finish what was put aside. The groove of a frame is so wide.
 */
const cell = ({ groove = 11, keys = '', more = '', upTo = 2, response = '' } = {}) => `
stock:
  sheet: { unlimited: true }
  pin: { unlimited: true }
  frame: { on-hand: 1, reorder-at: 0, order: 9, lead-time: 45 s, features: { groove: { nominal: ${groove} mm } } }
parts:
  tray: { features: { rim: { nominal: 10 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: assembly }
  assembly:
    does: assemble
    buffer: 9
    takes: [pin, frame]
    cycle: 6 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0.5 mm, most: 1.5 mm }]
    misfit: scrap
    to: good${keys && `\n    ${keys}`}
${more}
policies:
  carry on: []
  ahead:
    - { do: build-ahead, at: assembly, without: frame, up-to: ${upTo}, finish: 4 s, when: { stock: frame, below: 1 } }${response}`;

/** The running counts at some moments. */
function at(moments: readonly number[], text: string, policy = 'ahead') {
  const line = prepare(small('200 s', text), policy, 1);
  return moments.map((moment) => {
    line.calendar.run(moment);
    selfCheck(line);
    const pieces = Object.fromEntries([...line.stocks].map(([name, { tally }]) => [name, tally.taken]));
    return { ...line.tally.copy(moment), pieces };
  });
}
const goods = (moments: readonly number[], text: string, policy?: string) =>
  at(moments, text, policy).map(({ good }) => good);
/** Just before and at each of these. */
const about = (moments: readonly number[]) => moments.flatMap((moment) => [moment - 0.5, moment]);

describe('build-ahead', () => {
  it('works on parts without the missing mate, and finishes them first when it is there', () => {
    // Worked on from 20 and 30 s and put aside; those of 40 and 50 s wait. At 55 s the two are finished, then come these.
    const ends = [16, 59, 63, 69, 75, 81];
    expect(goods(about(ends), cell())).toEqual(ends.flatMap((_, i) => [i, i + 1]));
    const otherwise = [16, 61, 67, 73, 79];
    expect(goods(about(otherwise), cell(), 'carry on')).toEqual(otherwise.flatMap((_, i) => [i, i + 1]));
    const [, aside, first] = at([26, 54, 59], cell());
    expect(aside).toMatchObject({ setAside: 2, good: 1, started: 6, pieces: { pin: 3, frame: 1 } });
    // The oldest first: begun at 0 s and at 10 s.
    expect(first!.leadSeconds).toBe(16 + 49);
  });

  it('waits for the missing mate alone: what is put aside has all others', () => {
    // One pin each for the first and the two that are put aside. Those of 40 and 50 s find
    // neither mate, so that one of them waits for each.
    const line = prepare(
      small('200 s', cell().replace('pin: { unlimited: true }', 'pin: { on-hand: 3 }')),
      'ahead',
      1,
    );
    line.calendar.run(54);
    const owed = line.assemblies
      .get('assembly')!
      .on.mates.all.map(({ now }) => [now.stock.name, now.want.owed]);
    expect(owed).toEqual([
      ['pin', 1],
      ['frame', 3],
    ]);
  });

  it('decides only then what fits', () => {
    // A groove of 10 mm leaves no clearance. The frame is tried at 10, 20 and 30 s and thrown away; those of 40 and 50 s
    // are put aside at 46 and 56 s and finished at 60 and 64 s; that of 60 s is tried until 70 s.
    const text = cell({ groove: 10, keys: 'mate-tries: 3' });
    const [before, one, two, three] = at([59, 60, 64, 70], text);
    expect(before).toMatchObject({ setAside: 2, firstAttempts: 3, tight: 3, scrapped: 3 });
    expect(one).toMatchObject({ firstAttempts: 4, tight: 4, scrapped: 4 });
    // Each of the two put aside took a frame with it; the one taken at 64 s is in hand for its second try.
    expect(two).toMatchObject({ firstAttempts: 5, tight: 5, pieces: { pin: 1 + 2 + 1, frame: 1 + 2 + 1 } });
    expect(three).toMatchObject({ firstAttempts: 6, tight: 6, pieces: { pin: 4, frame: 4 } });
  });

  it('takes longer for what is pressed together then', () => {
    const forced = 'forcing: { stiffness: 100 N/mm, limit: 60 N, damages: 0 %, takes: 3 s }';
    // Half a millimetre is missing everywhere: 6 + 3 s, 4 + 3 s.
    const ends = [19, 62, 69, 78];
    const text = cell({ groove: 10, keys: forced });
    expect(goods(about(ends), text)).toEqual(ends.flatMap((_, i) => [i, i + 1]));
  });

  it('loses the part and its mates where a cycle is scrapped', () => {
    const more =
      'disturbances: { halt: { disturbs: station, station: assembly, cycle: scraps, at: 32 s, for: 1 s } }';
    // That of 30 s is scrapped; those of 20 and 40 s are put aside, and finished at 59 and 63 s.
    const [seen, after] = at([54, 63], cell({ more }));
    expect(seen).toMatchObject({ setAside: 2, scrapped: 1, good: 1, pieces: { pin: 4, frame: 1 } });
    expect(after).toMatchObject({ good: 3, pieces: { pin: 4 + 1, frame: 3 + 1 } });
  });

  it('goes on with what stands in for the missing mate', () => {
    // b is taken from 40 s on, as sheets become low: 40 to 44 s, 44 to 48 s, that of 40 s until 54 s; then the next.
    const text = cell({
      response: '\n    - { do: substitute, for: frame, by: frame b, when: { stock: sheet, below: 6 } }',
    })
      .replace('sheet: { unlimited: true }', 'sheet: { on-hand: 10 }')
      .replace(
        'parts:',
        '  frame b: { stands-in-for: frame, unlimited: true, features: { groove: { nominal: 11 mm } } }\nparts:',
      );
    const ends = [16, 44, 48, 54];
    expect(goods(about(ends), text)).toEqual(ends.flatMap((_, i) => [i, i + 1]));
    expect(at([54], text)[0]).toMatchObject({
      substituted: 3,
      setAside: 2,
      pieces: { frame: 1, 'frame b': 3 + 1 },
    });
  });

  it('lets every machine that idles finish what was put aside', () => {
    // At 55 s the first machine is at work on that of 50 s, until 56 s: the second takes up that of 20 s at once.
    const ends = [16, 59, 60, 63, 64];
    const text = cell({ keys: 'machines: 2', upTo: 9 });
    expect(goods(about(ends), text)).toEqual(ends.flatMap((_, i) => [i, i + 1]));
  });

  it('puts nothing aside while another mate is missing, too', () => {
    const text = cell().replace('pin: { unlimited: true }', 'pin: { on-hand: 2 }');
    expect(at([54], text)[0]).toMatchObject({ setAside: 1, pieces: { pin: 2, frame: 1 } });
  });
});
