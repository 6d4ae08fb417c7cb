import { type Change, ChangeError, changedRaw, changeText } from './changed.ts';
import { findings, valueAt, withoutFaulty } from './findings.ts';
import { join } from './join.ts';
import { type Finding, locate, type Refused, ScenarioError } from './problem.ts';
import type { Raw } from './raw.ts';
import type { Names, Raw as Read } from './references/checker.ts';
import { crossReferences } from './references/references.ts';
import type { Scenario } from './scenario.ts';
import { schema } from './schema.ts';
import { isSupplement, readSupplement, type SupplementSpec } from './supplement.ts';
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

/** A text and what to call it in messages, usually the file's path. */
export interface Source {
  readonly source: string;
  readonly text: string;
}

/** A text as far as it can be read by itself. */
interface ReadSource extends Source {
  readonly read: ReturnType<typeof readYaml>;
  /** Undefined where it cannot be read. */
  readonly raw: unknown;
}

function readSource({ source, text: given }: Source): ReadSource {
  // A byte order mark takes no column in an editor.
  const text = given.replace(/^\uFEFF/, '');
  const read = readYaml(text);
  return { source, text, read, raw: 'raw' in read ? read.raw : undefined };
}

/** The text with what keeps it from being read, or else with what was found in it. */
function refusedIn({ source, text, read }: ReadSource, found: readonly Finding[]): Refused {
  const problems = 'problems' in read ? read.problems : locate(found, read.document, read.lines);
  return { source, text, problems };
}

/** What is wrong with a scenario's data, which may have been joined from several files, and the scenario if nothing is. */
function judge(raw: unknown): { found: Finding[]; data: Read | null } {
  const result = schema.safeParse(raw);
  const found = result.success ? [] : findings(result.error, raw);
  const sound = withoutFaulty(raw, found);
  const judged = result.success ? result : schema.safeParse(sound.rest);
  if (judged.success) {
    const names = namesIn(raw as Record<string, unknown>, sound.places);
    found.push(...crossReferences(judged.data, names, result.success));
  }
  return { found, data: result.success ? result.data : null };
}

function scenarioOf(data: Read): Scenario {
  const { stock, parts = [], demand = null, disturbances = [], cases = [], mendline: _, ...rest } = data;
  return { ...rest, stocks: stock, parts, demand, disturbances, cases };
}

const NO_LINE: Finding = {
  path: [],
  message:
    'this file adds to a line and has none of its own; name the scenario of a line, and this file behind "--with"',
};

const AN_EXERCISE: Finding = {
  path: [],
  message: 'this is an exercise, which "mendline classroom" takes; a scenario opens with "mendline: 1"',
};

const isExercise = (raw: unknown): boolean =>
  typeof raw === 'object' && raw !== null && 'exercise' in raw && !('mendline' in raw);

/** Why a file cannot be the scenario of a line, where it is of another kind. */
function otherKind(raw: unknown): Finding | null {
  if (isExercise(raw)) return AN_EXERCISE;
  return isSupplement(raw) ? NO_LINE : null;
}

/**
 * Reads the text of a scenario with those of supplements that are joined to it, in their order.
 * @returns the scenario, what each supplement says of itself, and the data that all were joined to
 * @throws ScenarioError listing every problem of every text with its line and column
 */
export function parseJoined(
  line: Source,
  supplements: readonly Source[],
): { scenario: Scenario; supplements: readonly SupplementSpec[]; raw: Raw } {
  const own = readSource(line);
  const others = supplements.map(readSource);
  const { raw, taken, ownerOf } = join(own, others);
  const alone = others.map((other) =>
    isExercise(other.raw) ? { found: [AN_EXERCISE], spec: null } : readSupplement(other.raw),
  );
  // What cannot be read has problems of its own, which are told instead.
  const other = 'raw' in own.read ? otherKind(own.raw) : NO_LINE;
  const { found, data } = other === null ? judge(raw) : { found: [other], data: null };
  const refused = [
    refusedIn(
      own,
      found.filter((finding) => ownerOf(finding) === undefined),
    ),
    ...others.map((other, i) =>
      refusedIn(other, [
        ...alone[i]!.found,
        ...taken[i]!,
        ...found.filter((finding) => ownerOf(finding) === i),
      ]),
    ),
  ].filter(({ problems }) => problems.length > 0);
  if (refused.length > 0 || data === null) throw new ScenarioError(refused);
  return { scenario: scenarioOf(data), supplements: alone.map(({ spec }) => spec!), raw: raw as Raw };
}

/** The scenario that data describe, with what was found wrong with them; null where anything was. */
export function readRaw(raw: Raw): { found: readonly Finding[]; scenario: Scenario | null } {
  const { found, data } = judge(raw);
  return { found, scenario: data !== null && found.length === 0 ? scenarioOf(data) : null };
}

/**
 * The scenario with other values than those written.
 * @param raw data of a scenario that was read before
 * @throws ChangeError
 */
export function parseChanged(raw: Raw, changes: readonly Change[]): Scenario {
  const { found, scenario } = readRaw(changedRaw(raw, changes));
  if (scenario !== null) return scenario;
  const given = changes.map(changeText);
  const said = found.map(({ path, message }) => `${path.map(String).join('/')}: ${message}`);
  throw new ChangeError(`with ${given.join(', ')} this is no scenario: ${[...new Set(said)].join('; ')}`);
}

/**
 * Reads the text of a scenario.
 * @param source what to call the text in messages, usually the file's path
 * @throws ScenarioError listing every problem of the text with its line and column
 */
export function parseScenario(text: string, source: string): Scenario {
  return parseJoined({ source, text }, []).scenario;
}
