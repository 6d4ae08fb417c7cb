import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused } from './sample.ts';

const policy = (...responses: string[]) =>
  changed(
    '  carry on: []\n',
    `  carry on: []\n  it: [${responses.map((response) => `{ ${response} }`).join(', ')}]\n`,
  );
const hold = (timing: string) => policy(`do: hold, station: packing, ${timing}`);
const refused = (text: string, ...messages: (string | RegExp)[]) => expectRefused(text, ...messages);

describe('what decides when a response is in force', () => {
  it('may be all of it at once', () => {
    const text = hold(
      'name: look closer, when: { at: assembly, sees: misfits, count: 3, of-last: 20 }, notice: 2 min, ' +
        'acts-after: { distribution: triangular, low: 1 min, mode: 2 min, high: 9 min }, ' +
        'until: { at: assembly, sees: misfits, at-most: 0, of-last: 50 }, lasts: 2 h, cool-down: 30 min',
    );
    const response = parseScenario(text, 'it').policies.find(({ name }) => name === 'it')!.responses[0];
    expect(response).toEqual({
      do: 'hold',
      station: 'packing',
      name: 'look closer',
      when: { at: 'assembly', sees: 'misfits', count: 3, ofLast: 20 },
      notice: { distribution: 'constant', value: 120 },
      actsAfter: { distribution: 'triangular', low: 60, mode: 120, high: 540 },
      until: { at: 'assembly', sees: 'misfits', atMost: 0, ofLast: 50 },
      lasts: { distribution: 'constant', value: 7200 },
      coolDown: 1800,
    });
  });

  it('is refused where it takes no time', () => {
    refused(hold('when: { from: 1 h }, lasts: ¤0 s'), 'expected a time above zero');
    refused(hold('when: { from: 1 h }, cool-down: ¤0 s'), 'above zero');
  });

  it('must say how long a signal keeps it in force', () => {
    const seen = '{ at: assembly, sees: misfits, count: 3, of-last: 20 }';
    refused(hold(`when: ¤${seen}`), 'say how long the response is in force then: "lasts: 2 h"');
    refused(hold(`when: ¤{ any: [${seen}, { from: 2 h }] }`), 'over at once');
    expect(() => parseScenario(hold(`when: ${seen}, until: { from: 2 h }`), 'it')).not.toThrow();
  });

  it('needs its condition where the response does nothing without', () => {
    refused(policy('do: hold, station: packing').replace('{ do: hold', '¤{ do: hold'), '"when" is missing');
  });
});

describe('responses that go by others', () => {
  const other = (timing: string) => `do: slow, station: packing, to: 50 %, ${timing}`;
  const by = (name: string, timing = '') =>
    `do: hold, station: packing, when: { response: ${name} }${timing}`;

  it('name them rightly', () => {
    refused(
      policy(by('¤othr'), other('name: other, when: { from: 1 h }')),
      '"othr" is no name of a response of this policy; did you mean "other"?',
    );
    refused(
      policy(other('name: other, when: { from: 1 h }'), other('name: ¤other, when: { from: 1 h }')),
      'another response of this policy is called "other"',
    );
    // What is said of the other already is not said again.
    refused(policy(by('other'), other('name: other, when: { from: ¤1 }')), '1 has no unit');
  });

  it('do not go by themselves', () => {
    refused(policy(by('¤me', ', name: me')), 'this is the response "me" itself, so it would trigger itself');
    refused(
      policy(other('name: me, when: { from: 1 h }, until: { any: [{ response: ¤me }, { from: 2 h }] }')),
      'would trigger itself',
    );
  });

  it('do not go by each other in no time', () => {
    const circle = (first: string, second: string) => [
      `do: hold, station: packing, name: a, when: ¤{ not: { response: b } }${first}`,
      `do: hold, station: packing, name: b, when: ¤{ response: a }${second}`,
    ];
    const message = 'go by each other without any time passing; give one of them "notice" or "cool-down"';
    refused(policy(...circle('', '')), message, message);
    refused(policy(...circle('', ', notice: 0 s')), message, message);
    for (const passing of ['notice: 1 min', 'acts-after: 1 min', 'cool-down: 1 min', 'lasts: 1 min'])
      expect(() =>
        parseScenario(policy(...circle('', `, ${passing}`)).replaceAll('¤', ''), 'it'),
      ).not.toThrow();
  });
});

describe('a condition on what is not there', () => {
  const when = (condition: string) => hold(`lasts: 1 h, when: ${condition}`);
  it.each([
    ['¤{ feature: rim, above: 121 mm }', 'what a feature truly is, nobody sees; go by its readings'],
    ['¤{ true: rim }', 'true values are seen by nobody'],
    ['¤{ luck: 3 }', 'what is drawn for a part is seen by nobody'],
    ['¤{ disturbance: cold }', 'when a disturbance begins and ends, nobody is told'],
    ['¤{ setting: heater, above: 3 °C }', 'how far a setting is off, nobody sees'],
    ['¤{ supplier: acme }', 'nobody is told; go by the stock'],
    ['{ all: [¤{ feature: rim, above: 121 mm }] }', 'nobody sees'],
    ['¤{ stok: sheet, below: 3 }', 'a condition has no key "stok"; did you mean "stock"?'],
    ['¤{ of: rim, above: 121 mm }', '"at" is missing: expected the station where that is seen'],
    ['¤{ sees: misfits, count: 3, of-last: 20 }', '"at" is missing: expected the station'],
    ['¤{ chart: ewma, weight: 20 % }', '"at" is missing: expected the station'],
    ['¤{ wondering: 3 }', /no key "wondering"; expected one of stock, buffer, [a-z, ]+$/],
    ['¤{ at: gauging, of: rim }', '"above" or "below", "chart" or "capability"'],
    ['¤{ at: gauging, of: rim, mean-of: 3 }', 'expected what of the readings it goes by'],
    ['¤{ at: gauging, of: rim, abov: 9 mm }', 'readings it goes by: "above" or "below"'],
    ['¤{}', 'expected one of stock, buffer'],
    ['¤soon', 'expected a mapping told by its key'],
    ['{ buffer: ¤forming, above: 3 }', '"forming" has no buffer, since parts begin there'],
    ['{ buffer: ¤pack, above: 3 }', 'did you mean "packing"?'],
    ['{ buffer: packing, above: ¤9 }', 'has 9 places, so there are never more than 9 parts'],
    ['{ buffer: packing, above: 4, until: ¤5 }', '"until" must not lie over "above"'],
    ['{ buffer: packing, above: ¤4, below: 3 }', 'give either "above" or "below"'],
    ['{ station: gauging, is: ¤held }', 'no response of this policy holds "gauging", so it is never held'],
    ['{ station: gauging, is: ¤off-shift }', 'follows no calendar, so it is never off shift'],
    ['{ station: gauging, is: ¤dwn }', '"dwn" is not known here; did you mean "down"?'],
    ['{ station: gauging, is: down, machines: ¤2 }', '"gauging" has 1 machine'],
    ['{ station: ¤gaugin, is: down }', 'did you mean "gauging"?'],
    ['{ demand: ¤late-orders, above: 3 }', 'there are no orders, since all that is made is taken'],
    ['{ demand: ¤late, above: 3 }', '"late" is not known here'],
    ['{ calendar: ¤nights }', '"nights" is no calendar'],
    ['{ response: ¤x }', '"x" is no name of a response of this policy'],
    ['{ at: gauging, of: ¤tab, above: 9 mm }', 'no feature that "gauging" measures'],
    ['{ at: ¤assembly, of: rim, above: 9 mm }', 'expected one that does gauge'],
    ['{ at: gauging, of: rim, above: ¤9 }', '9 has no unit'],
    ['{ at: gauging, sees: ¤misfits, count: 1, of-last: 2 }', 'misfits are seen where parts are assembled'],
    ['{ at: assembly, sees: misfits, count: ¤3, of-last: 2 }', 'cannot be more than "of-last"'],
    ['{ at: assembly, sees: misfits, at-most: ¤2, of-last: 2 }', 'or it always signals'],
    ['¤{ at: assembly, sees: misfits, of-last: 2 }', 'expected "count" (signals at so many) or "at-most"'],
    ['{ at: gauging, of: rim, chart: shewhart, limit: ¤0, sigma: 1 mm }', 'above zero'],
    ['{ from: 3 h, to: ¤2 h }', 'it ends before it begins'],
    ['{ all: ¤[] }', 'expected at least one condition'],
    [
      '{ not: ¤{ at: assembly, sees: misfits, count: 1, of-last: 2 } }',
      'over at once, so it is nearly always without one',
    ],
    [
      '{ all: ¤[{ at: assembly, sees: misfits, count: 1, of-last: 2 }, { at: assembly, sees: unread, count: 1, of-last: 2 }] }',
      'two watches never signal together',
    ],
  ])('%s is refused', (condition, message) => {
    refused(when(condition), message);
  });
});
