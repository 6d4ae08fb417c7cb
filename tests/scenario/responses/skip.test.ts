import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { changed, refuses } from '../sample.ts';

const carryOn = '  carry on: []\n';
const past = (keys: string) =>
  `${carryOn}  past: [{ do: skip, ${keys}, when: { stock: sheet, below: 9 } }]\n`;

describe('skip', () => {
  it.each(['marking', 'gauging', 'packing'])('is taken at %s', (station) => {
    const text = changed(carryOn, past(`station: ${station}, later: yes`));
    expect(() => parseScenario(text, 'cell.yaml')).not.toThrow();
  });

  refuses([
    [carryOn, past('station: ¤markin, later: no'), 'did you mean "marking"?'],
    [
      carryOn,
      past('station: ¤assembly, later: no'),
      '"assembly" is a station that does assemble; expected one that does work or mark or gauge',
    ],
    [carryOn, past('station: marking, later: ¤perhaps'), 'expected yes or no'],
  ]);

  const feed = changed(
    '  trimming: {',
    '  feed: { does: work, takes: film, cycle: 9 s, to: trimming }\n  trimming: {',
  );
  refuses(
    [[carryOn, past('station: ¤feed, later: no'), 'parts start at "feed", so none can go past it']],
    feed,
  );

  const carried = changed('disturbances:', 'carriers: { tray: { number: 9, from: packing } }\ndisturbances:');
  refuses(
    [
      [
        carryOn,
        past('station: ¤packing, later: no'),
        'parts take the carriers "tray" here, so they cannot go past',
      ],
    ],
    carried,
  );

  const round = changed(
    'packing: { does: work, buffer: 9, cycle: 3 s, to: good }',
    'packing: { does: work, buffer: 9, cycle: 3 s, to: { by: share, routes: { good: 90 %, marking: 10 % } } }',
  );
  refuses(
    [[carryOn, past('station: ¤marking, later: no'), 'parts come to "marking" again and again']],
    round,
  );

  const batched = changed('packing: { does: work, buffer: 9,', 'packing: { does: work, buffer: 9, batch: 3,');
  refuses(
    [
      [
        carryOn,
        past('station: packing, later: ¤yes'),
        '"packing" starts only when several parts are there, so that one might wait for ever; say "later: no"',
      ],
    ],
    batched,
  );

  refuses(
    [
      [
        carryOn,
        past('station: gauging, later: ¤yes'),
        '"gauging" may send parts back to "bench", from where they would go through the line again; say "later: no"',
      ],
    ],
    changed('off-limits: pass', 'off-limits: bench'),
  );
  refuses([
    [
      carryOn,
      past('station: gauging, later: ¤yes').replace(
        'past: [',
        'past: [{ do: rework, at: gauging, bench: bench }, ',
      ),
      '"gauging" may send parts back to "bench"',
    ],
  ]);
});
