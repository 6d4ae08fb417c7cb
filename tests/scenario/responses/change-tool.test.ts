import { describe } from 'vitest';
import { changed, refuses } from '../sample.ts';

const carryOn = '  carry on: []\n';
const sharp = (keys: string) =>
  `${carryOn}  sharp: [{ do: change-tool, ${keys}, when: { stock: sheet, below: 9 } }]\n`;
const tooled = (renewedBy: string) =>
  changed(
    'trimming: { does: trim, buffer: 9, cycle: 5 s, to: marking }',
    `trimming:
    does: trim
    buffer: 9
    cycle: 5 s
    tool: { renewed-by: [${renewedBy}], burr: { per: 9, grows: 1 mm, most: 1 mm, deburring: 2 s } }
    set-ups: { blade: { cycles: 9, takes: 9 s }, sharpening: { cycles: 5, takes: 1 s } }
    breakdowns: { dull: { every: 9 h, counted: working, repair: 1 min, cycle: resumes } }
    to: marking`,
  );

describe('change-tool', () => {
  refuses([
    [
      carryOn,
      sharp('station: ¤marking'),
      '"marking" is a station that does mark; expected one that does trim',
    ],
    [
      carryOn,
      sharp('station: ¤trimming'),
      'nothing that can be asked for renews a tool of "trimming"; name one of its set-ups or maintenance under "renewed-by" of its "tool"',
    ],
  ]);
  refuses([[carryOn, sharp('station: ¤trimming'), 'nothing that can be asked for']], tooled('dull'));
  refuses(
    [
      [carryOn, sharp('station: trimming, by: ¤blad'), 'did you mean "blade"?'],
      [
        carryOn,
        sharp('station: trimming, by: ¤dull'),
        '"dull" is no set-up or maintenance that renews a tool of "trimming"',
      ],
      [
        carryOn,
        sharp('station: trimming').replace('[{', '[¤{'),
        'several renew the tool of "trimming"; say which: "by: blade"',
      ],
    ],
    tooled('blade, sharpening, dull'),
  );
});
