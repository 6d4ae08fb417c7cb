import { changed, SOUND } from '../scenario/sample.ts';

const MORE = `  off: { disturbs: feature, feature: rim, by: 0.2 mm, spread: 150 %, at: 2 h, for: 1 h }
  knocked: { disturbs: gauge, station: gauging, feature: rim, bias: 0.05 mm, spread: 300 %, at: 2 h, for: 1 h }
  dim: { disturbs: reader, station: assembly, to: 60 %, at: 2 h, for: 1 h }
  bad lot: { disturbs: lot, stock: sheet, feature: thickness, by: 0.2 mm, unsound: 20 %, at: 2 h, for: 1 h }
  tired: { disturbs: speed, station: forming, to: 70 %, ramp: 30 min, at: 2 h, for: 1 h }
  ill: { disturbs: health, station: assembly, breakdown: torn, as-often: 300 %, repairs-take: 200 %, at: 2 h, for: 1 h }
  away: { disturbs: crew, crew: fitter, away: 1, at: 2 h, for: 1 h }
  slow belt: { disturbs: conveyor, station: packing, to: 50 %, at: 2 h, for: 1 h, fades: 10 min }
  rush: { disturbs: demand, to: 200 %, after: { parts: 50, of: forming }, for: 1 h, burst: { times: 2, apart: 5 min } }
`;

/** SOUND with a disturbance of every kind. */
export const EVERY = [
  ['rim:\n        nominal: 120 mm\n', 'rim:\n        nominal: 120 mm\n        own-sd: 0.05 mm\n'],
  ['packing: { does: work, buffer: 9,', 'packing: { does: work, buffer: { places: 9, transit: 30 s },'],
  ['cycle: resumes, spare: film }', 'cycle: resumes, spare: film, crew: fitter }'],
  [
    'disturbances:\n',
    `crew: { fitter: { number: 1 } }
demand: { every: 10 min, pieces: 4, due-after: 1 h, finished-goods: { most: 900 } }
disturbances:
${MORE}`,
  ],
].reduce((text, [from, to]) => changed(from!, to!, text), SOUND);
