import { expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { type Problem, ScenarioError } from '../../src/scenario/problem.ts';

/** A scenario without problems that uses every kind of station, disturbance and response. */
export const SOUND = `mendline: 1
title: A sound cell
about: Every kind of entry once. All figures are invented.
run: { warm-up: 1 h, length: 8 h, seeds: 4 }
stock:
  sheet:
    on-hand: 90
    reorder-at: 70
    order: 90
    lead-time: 2 h
    thickness: { nominal: 0.5 mm }
  frame:
    unlimited: true
    features:
      groove: { nominal: 120.3 mm }
  film: { unlimited: true }
parts:
  tray:
    features:
      rim:
        nominal: 120 mm
        tolerance: 0.2 mm
        made-at: forming
        mould: 120.5 mm
        shrinkage: 0.4 %
        gains: { heater: -0.03 mm/°C, thickness: 1.5 mm/mm }
        cavities: [0.02 mm, -0.02 mm]
      tab:
        nominal: 18 mm
        made-at: trimming
stations:
  forming:
    does: form
    takes: sheet
    makes: tray
    per-sheet: 2
    cycle: 12 s
    heating: 24 s/mm
    settings:
      heater: { target: 150 °C, cycle-sd: 0.6 °C }
    to: trimming
  trimming: { does: trim, buffer: 9, cycle: 5 s, to: marking }
  marking: { does: mark, buffer: 9, cycle: 4 s, takes-hold: 99 %, to: gauging }
  gauging:
    does: gauge
    buffer: 9
    cycle: 6 s
    every: 12
    measures:
      rim: { repeatability: 0.02 mm }
    off-limits: pass
    to: assembly
  assembly:
    does: assemble
    buffer: 9
    takes: [frame]
    cycle: 6 s
    fits:
      - { hole: frame.groove, shaft: rim, least: 0.1 mm, most: 0.6 mm }
    misfit: bench
    reader: { reads: 99 %, unread: { by-hand: 12 s } }
    breakdowns: { torn: { every: 99 h, counted: working, repair: 7 min, cycle: resumes, spare: film } }
    to: packing
  packing: { does: work, buffer: 9, cycle: 3 s, to: good }
  bench:
    does: rework
    buffer: unlimited
    cycle: 40 s
    limit: 2
    corrects:
      rim: { removes: 80 %, own-sd: 0.06 mm }
    to: gauging
disturbances:
  cold: { disturbs: setting, setting: heater, by: -6 °C, at: 2 h, for: 4 h }
  late: { disturbs: supplier, stock: sheet, at: 2 h, for: 4 h }
  faded: { disturbs: marks, station: marking, takes-hold: 60 %, at: 2 h, for: 4 h }
  halt: { disturbs: station, station: packing, at: 2 h, for: 4 h }
policies:
  carry on: []
  stop and fix:
    - do: stop-and-fix
      station: forming
      watch: { at: assembly, sees: misfits, count: 5, of-last: 25 }
      takes: 30 min
  the rest:
    - { do: inspect, at: gauging, every: 1, off-limits: scrap }
    - { do: retune, setting: heater, by: rim, weight: 20 %, deadband: 0.03 mm }
    - { do: match, at: assembly, among: 9, guard: 0 mm, mate-repeatability: 0 mm, takes: 1 s }
    - { do: rework, at: assembly, bench: bench }
`;

/** SOUND with `from`, which must be there once, written as `to`. */
export function changed(from: string, to: string, text = SOUND): string {
  expect(text.split(from).length, `"${from}" occurs once`).toBe(2);
  return text.replace(from, () => to);
}

/** The refusal of a text that must have problems. */
export function refusal(text: string): ScenarioError {
  try {
    parseScenario(text, 'cell.yaml');
  } catch (error) {
    if (error instanceof ScenarioError) return error;
    throw error;
  }
  throw new Error('the scenario was taken, but should have been refused');
}

export const problems = (text: string): readonly Problem[] => refusal(text).problems;

/** The text without its marks ¤, and the place of each mark. */
export function marked(text: string): { text: string; places: { line: number; column: number }[] } {
  const places = [];
  let clean = '';
  for (const [i, piece] of text.split('¤').entries()) {
    if (i > 0) {
      const lines = clean.split('\n');
      places.push({ line: lines.length, column: lines.at(-1)!.length + 1 });
    }
    clean += piece;
  }
  return { text: clean, places };
}

/** Expects one problem at each mark ¤ of the text, in their order, with these messages, and no others. */
export function expectRefused(text: string, ...messages: (string | RegExp)[]): void {
  const { text: clean, places } = marked(text);
  const found = problems(clean);
  expect(found.map(({ line, column }) => `${line}:${column}`)).toEqual(
    places.map(({ line, column }) => `${line}:${column}`),
  );
  for (const [i, message] of messages.entries()) {
    const matcher =
      typeof message === 'string' ? expect.stringContaining(message) : expect.stringMatching(message);
    expect(found[i]!.message).toEqual(matcher);
  }
  expect(found.length).toBe(messages.length);
}

/** What is changed in a sound scenario, with a mark before each place to be told, and the message there. */
type Case = readonly [from: string, to: string, ...messages: string[]];

/** One test a case, by default in SOUND. */
export function refuses(cases: readonly Case[], text = SOUND): void {
  it.each(cases)('%j written as %j is refused there', (from, to, ...messages) => {
    expectRefused(changed(from, to, text), ...messages);
  });
}
