import { type ConditionSpec, condition } from './conditions.ts';
import { findings } from './findings.ts';
import { furtherChecker } from './further-checker.ts';
import type { Problems } from './further-response.ts';
import { inWords } from './in-words.ts';
import { checkCondition } from './references/check-condition.ts';
import type { ResponseSpec } from './responses.ts';
import type { Scenario } from './scenario.ts';

/** Reads a condition that stands in no file, in the words of the format, for one who may hold any station. */
export function furtherCondition(given: unknown, scenario: Scenario): ConditionSpec | Problems {
  const read = condition.safeParse(given);
  if (!read.success) return { problems: findings(read.error, given).map(inWords) };
  const check = furtherChecker(scenario);
  const responses = scenario.stations.map(({ name }) => ({ do: 'hold', station: name }) as ResponseSpec);
  checkCondition(check, read.data, [], { self: undefined, responses, whole: true });
  return check.found.length === 0 ? read.data : { problems: check.found.map(inWords) };
}
