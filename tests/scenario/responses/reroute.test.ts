import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { changed, refuses } from '../sample.ts';

const carryOn = '  carry on: []\n';
const around = (keys: string) =>
  `${carryOn}  around: [{ do: reroute, ${keys}, when: { stock: sheet, below: 9 } }]\n`;
/** With stations that nothing feeds but a policy: a second marking station, and one that leads back to forming's next. */
const more = (extra: string) => changed('  bench:\n', `${extra}  bench:\n`);
const second = '  second: { does: mark, buffer: 9, cycle: 4 s, takes-hold: 99 %, to: gauging }\n';

describe('reroute', () => {
  it('may lead to a station that nothing else feeds', () => {
    expect(() =>
      parseScenario(changed(carryOn, around('at: trimming, to: second'), more(second)), 'cell.yaml'),
    ).not.toThrow();
  });

  it('may not lead parts round and round with another of the policy', () => {
    const both = (...to: string[]) => {
      const each = to.map((keys) => `{ do: reroute, ${keys}, when: { stock: sheet, below: 9 } }`);
      return () =>
        parseScenario(
          changed(carryOn, `${carryOn}  around: [${each.join(', ')}]\n`, more(second)),
          'cell.yaml',
        );
    };
    expect(both('at: marking, to: second')).not.toThrow();
    expect(both('at: trimming, to: second', 'at: second, to: assembly')).not.toThrow();
    expect(both('at: marking, to: second', 'at: second, to: marking')).toThrow(
      expect.objectContaining({
        problems: [
          expect.objectContaining({
            message: expect.stringContaining(
              'with the other ways that this policy turns, parts would come back to "second"',
            ),
          }),
        ],
      }),
    );
  });

  refuses([
    [carryOn, around('at: ¤triming, to: marking'), 'did you mean "trimming"?'],
    [carryOn, around('at: trimming, to: ¤markin'), 'did you mean "marking"?'],
    [carryOn, around('at: trimming, to: ¤trimming'), 'a station cannot pass its parts to itself'],
    [carryOn, around('at: trimming, to: ¤marking'), 'the parts of "trimming" go to "marking" anyway'],
    [carryOn, around('at: trimming, to: ¤forming'), '"forming" takes no parts from other stations'],
    [carryOn, around('at: trimming, to: ¤bench'), '"bench" is for rejects; send them there by "do: reject"'],
    [carryOn, around('at: gauging, to: ¤marking'), 'parts would come back to "gauging" from there'],
    [
      carryOn,
      around('at: forming, to: ¤marking'),
      'from "marking" parts do not come to "trimming", where "tab" is made; name a station before it',
    ],
    [
      carryOn,
      around('at: gauging, to: ¤packing'),
      'from "packing" parts do not come to "assembly", where mates are put in; name a station before it',
    ],
  ]);
});
