// A scenario is YAML, and JSON is YAML: the cases build theirs as objects.

/** `number` seconds as a scenario writes it. */
export const s = (number: number): string => `${number} s`;
export const percent = (share: number): string => `${100 * share} %`;

/** Laws of a time with its mean in seconds. */
export const exponential = (mean: number) => ({ distribution: 'exponential', mean: s(mean) });
/** By the squared coefficient of variation; Erlang-k is 1/k. */
export const gamma = (mean: number, scv: number) => ({
  distribution: 'gamma',
  mean: s(mean),
  cv: percent(Math.sqrt(scv)),
});
/** A whole number of steps (s): each ends it with chance `chance`. */
export const geometric = (chance: number, step: number) => ({
  distribution: 'geometric',
  chance: percent(chance),
  step: s(step),
});
export const erlang = (phases: number, mean: number) => gamma(mean, 1 / phases);

export type Keys = Readonly<Record<string, unknown>>;

interface Sections {
  readonly stock?: Keys;
  readonly parts?: Keys;
  readonly stations: Keys;
  readonly crew?: Keys;
  readonly carriers?: Keys;
  readonly disturbances?: Keys;
  /** Besides the one that does nothing. */
  readonly policies?: Keys;
}

/** Material that never runs out, for a first station that never starves. */
export const BLANKS = { blank: { unlimited: true } };

/** The scenario around `sections` as a function of the run's length; both times in seconds. */
export const scenarioText =
  (warmUp: number, sections: Sections) =>
  (length: number): string =>
    JSON.stringify({
      ...{ mendline: 1, title: 'check', about: 'a line whose answer is published' },
      run: { 'warm-up': s(warmUp), length: s(length), seeds: 1 },
      ...sections,
      policies: { 'carry on': [], ...sections.policies },
    });

/**
 * Stations in series that do plain work, the first on material that never runs out.
 * @param own the keys of each station: its cycle, and breakdowns where it has any
 * @param places places in front of each but the first
 */
export function series(own: readonly Keys[], places: number | 'unlimited'): Sections {
  const station = (keys: Keys, i: number) => ({
    does: 'work',
    ...(i === 0 ? { takes: 'blank' } : { buffer: places }),
    ...keys,
    to: i + 1 < own.length ? `s${i + 2}` : 'good',
  });
  return {
    stock: BLANKS,
    stations: Object.fromEntries(own.map((keys, i) => [`s${i + 1}`, station(keys, i)])),
  };
}
