import { findings, valueAt, withoutFaulty } from './findings.ts';
import { locate, type Problem, ScenarioError } from './problem.ts';
import type { Names } from './references/checker.ts';
import { crossReferences } from './references/references.ts';
import type { Scenario } from './scenario.ts';
import { schema } from './schema.ts';
import { readYaml } from './yaml-text.ts';

function entriesOf(section: unknown): [string, unknown][] {
  return typeof section === 'object' && section !== null ? Object.entries(section) : [];
}

const keysOf = (section: unknown): string[] => entriesOf(section).map(([key]) => key);
const under = (entry: unknown, key: string): unknown => (entry as Record<string, unknown> | null)?.[key];

/** The names of the file's entries, faulty ones included, so that a reference to one is no second problem. */
function namesIn(raw: Record<string, unknown>, places: Names['places']): Names {
  const stations = entriesOf(raw.stations);
  return {
    stock: keysOf(raw.stock),
    parts: keysOf(raw.parts),
    stations: stations.map(([name]) => name),
    crew: keysOf(raw.crew),
    calendars: keysOf(raw.calendars),
    disturbances: keysOf(raw.disturbances),
    features: entriesOf(raw.parts).flatMap(([, part]) => keysOf(under(part, 'features'))),
    settings: stations.flatMap(([, station]) => keysOf(under(station, 'settings'))),
    next: new Map(stations.map(([name, station]) => [name, under(station, 'to')])),
    given: (path) => valueAt(raw, path) !== undefined,
    places,
  };
}

/**
 * Reads the text of a scenario.
 * @param source what to call the text in messages, usually the file's path
 * @throws ScenarioError listing every problem of the text with its line and column
 */
export function parseScenario(given: string, source: string): Scenario {
  // A byte order mark takes no column in an editor.
  const text = given.replace(/^\uFEFF/, '');
  const refuse = (problems: readonly Problem[]): never => {
    throw new ScenarioError(problems, source, text);
  };
  const read = readYaml(text);
  if ('problems' in read) return refuse(read.problems);
  const { document, lines, raw } = read;
  const result = schema.safeParse(raw);
  const found = result.success ? [] : findings(result.error, raw);
  const sound = withoutFaulty(raw, found);
  const judged = result.success ? result : schema.safeParse(sound.rest);
  if (judged.success) {
    const names = namesIn(raw as Record<string, unknown>, sound.places);
    found.push(...crossReferences(judged.data, names, result.success));
  }
  if (found.length > 0 || !result.success) return refuse(locate(found, document, lines));
  const {
    stock,
    parts = [],
    demand = null,
    disturbances = [],
    cases = [],
    mendline: _,
    ...rest
  } = result.data;
  return { ...rest, stocks: stock, parts, demand, disturbances, cases };
}
