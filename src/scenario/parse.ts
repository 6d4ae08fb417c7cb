import { LineCounter, parseDocument } from 'yaml';
import { findings, withoutFaulty } from './findings.ts';
import { locate, type Problem, ScenarioError } from './problem.ts';
import { crossReferences, type Names } from './references.ts';
import type { Scenario } from './scenario.ts';
import { schema } from './schema.ts';

function keysOf(section: unknown): string[] {
  return typeof section === 'object' && section !== null ? Object.keys(section) : [];
}

/** The names of the file's entries, faulty ones included, so that a reference to one is no second problem. */
function namesIn(raw: Record<string, unknown>): Names {
  return {
    stock: keysOf(raw.stock),
    parts: keysOf(raw.parts),
    stations: keysOf(raw.stations),
  };
}

/**
 * Reads the text of a scenario.
 * @param source what to call the text in messages, usually the file's path
 * @throws ScenarioError listing every problem of the text with its line and column
 */
export function parseScenario(text: string, source: string): Scenario {
  const refuse = (problems: readonly Problem[]): never => {
    throw new ScenarioError(problems, source, text);
  };
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false });
  if (document.errors.length > 0) {
    refuse(
      document.errors.map(({ pos, message }) => {
        const { line, col } = lines.linePos(pos[0]);
        return { line, column: col, message: `not readable as YAML: ${message}` };
      }),
    );
  }
  const raw: unknown = document.toJS();
  if (raw === null || raw === undefined) {
    refuse([{ line: 1, column: 1, message: 'the file is empty; a scenario starts with "mendline: 1"' }]);
  }
  const result = schema.safeParse(raw);
  const found = result.success ? [] : findings(result.error, raw);
  const whole = result.success ? result : schema.safeParse(withoutFaulty(raw, found));
  if (whole.success)
    found.push(...crossReferences(whole.data, namesIn(raw as Record<string, unknown>), result.success));
  if (found.length > 0 || !result.success) refuse(locate(found, document, lines));
  const { title, about, run, stock, parts = [], stations, disturbances = [], policies } = result.data!;
  return { title, about, run, stocks: stock, parts, stations, disturbances, policies };
}
