import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused, refuses, SOUND } from './sample.ts';

describe('the spare of a breakdown', () => {
  it('is a stock', () => {
    const assembly = parseScenario(SOUND, 'cell.yaml').stations.find(({ name }) => name === 'assembly')!;
    expect(assembly.breakdowns[0]).toMatchObject({ name: 'torn', spare: 'film' });
  });

  refuses([
    ['spare: film', 'spare: ¤flim', '"flim" is no stock; did you mean "film"?'],
    ['spare: film', '¤spares: film', 'did you mean "spare"?'],
  ]);
});

describe('a stock that nothing takes', () => {
  refuses([
    [
      '  film: { unlimited: true }',
      '  film: { unlimited: true }\n  element: ¤{ on-hand: 1 }',
      'nothing takes it; name it under "takes" of a station or "spare" of a breakdown',
    ],
  ]);
});

/** Takes the spare of assembly out of packing, which has such a piece, too. */
const BORROWING = changed(
  '  the rest:\n',
  '  the rest:\n    - { do: cannibalise, spare: film, from: [packing] }\n',
  changed(
    '  packing: { does: work, buffer: 9, cycle: 3 s, to: good }',
    '  packing: { does: work, buffer: 9, cycle: 3 s, to: good, breakdowns: { worn: { every: 9 h, counted: clock, repair: 9 min, cycle: resumes, spare: film } } }',
    changed('  film: { unlimited: true }', '  film: { on-hand: 3 }'),
  ),
);

describe('a response that takes spares out of machines', () => {
  it('names them in the order of choice', () => {
    const text = changed('from: [packing]', 'from: [packing, assembly]', BORROWING);
    const { policies } = parseScenario(text, 'cell.yaml');
    expect(policies[2]!.responses[0]).toEqual({
      ...{ do: 'cannibalise', spare: 'film', from: ['packing', 'assembly'] },
    });
  });

  refuses(
    [
      ['spare: film, from', 'spare: ¤flim, from', '"flim" is no stock; did you mean "film"?'],
      ['spare: film, from', 'spare: ¤frame, from', 'no repair needs "frame"'],
      ['from: [packing]', 'from: ¤[]', 'expected at least one station'],
      ['from: [packing]', 'from: [¤paking]', '"paking" is no station; did you mean "packing"?'],
      ['from: [packing]', 'from: [packing, ¤packing]', '"packing" is listed twice'],
      [
        'from: [packing]',
        'from: [¤forming]',
        'no breakdown of "forming" needs "film", so it has none to give; it is needed at assembly, packing',
      ],
    ],
    BORROWING,
  );

  it('is refused where the stock never runs out', () => {
    const text = changed('spare: film, from', 'spare: ¤film, from', BORROWING);
    expectRefused(
      changed('film: { on-hand: 3 }', 'film: { unlimited: true }', text),
      '"film" never runs out, so no machine is taken apart for it',
    );
  });

  it('is refused from the only machine that needs one', () => {
    const text = changed(
      '  the rest:\n',
      '  the rest:\n    - { do: cannibalise, spare: film, from: [¤assembly] }\n',
      changed('  film: { unlimited: true }', '  film: { on-hand: 3 }'),
    );
    expectRefused(text, '"assembly" is the only machine that needs "film", and cannot give it to itself');
    const two = text.replace('¤', '').replace('takes: [frame]', 'takes: [frame]\n    machines: 2');
    expect(parseScenario(two, 'cell.yaml').policies[2]!.responses).toHaveLength(5);
  });

  it('is refused for a tool that its repair renews', () => {
    const text = changed(
      '  trimming: { does: trim, buffer: 9, cycle: 5 s, to: marking }',
      `  trimming: { does: trim, buffer: 9, cycle: 5 s, to: marking,
    breakdowns: { blunt: { every: 9 h, counted: working, repair: 9 min, cycle: resumes, spare: film } },
    tool: { renewed-by: [blunt], burr: { per: 10, grows: 0.1 mm, own-sd: 0.1 mm, most: 0.1 mm, deburring: 2 s } } }`,
      changed('spare: film, from', 'spare: ¤film, from', BORROWING),
    );
    expectRefused(text, '"film" renews a tool, and one that is taken out is not new');
  });
});
