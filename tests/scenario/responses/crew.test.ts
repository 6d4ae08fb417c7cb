import { describe } from 'vitest';
import { changed, refuses } from '../sample.ts';

const carryOn = '  carry on: []\n';
const crewed = changed(
  'cycle: resumes, spare: film }',
  'cycle: resumes, spare: film, crew: fitter }',
).replace('disturbances:', 'crew: { fitter: { number: 1 } }\ndisturbances:');
const urgent = (keys: string) => `${carryOn}  urgent: [{ ${keys}, when: { stock: sheet, below: 9 } }]\n`;

describe('what is done with a crew', () => {
  refuses(
    [
      [carryOn, urgent('do: call-crew, crew: ¤fiter, by: 1'), '"fiter" is no crew; did you mean "fitter"?'],
      [carryOn, urgent('do: call-crew, crew: fitter, by: ¤0'), 'expected a whole number from 1'],
      [carryOn, urgent('do: call-crew, crew: fitter, by: 1, comes-after: ¤30'), '30 has no unit'],
      [carryOn, urgent('do: prioritise, crew: ¤fiter, first: [assembly]'), 'did you mean "fitter"?'],
      [carryOn, urgent('do: prioritise, crew: fitter, first: [¤asembly]'), 'did you mean "assembly"?'],
      [
        carryOn,
        urgent('do: prioritise, crew: fitter, first: [¤packing]'),
        '"packing" never calls "fitter", so it cannot be served first; take it out',
      ],
      [
        carryOn,
        urgent('do: prioritise, crew: fitter, first: [assembly, ¤assembly]'),
        '"assembly" is listed twice; keep one of the two',
      ],
      [carryOn, urgent('do: prioritise, crew: fitter, first: ¤[]'), 'expected a list of stations, such as'],
    ],
    crewed,
  );
});
