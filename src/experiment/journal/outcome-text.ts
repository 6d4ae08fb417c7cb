import type { Outcome } from '../../line/outcome.ts';

/** Numbers that JSON has no words for stand as `{"$": "NaN"}`; nothing else in an outcome is an object of one text. */
const SPECIAL = '$';

function toPlain(_: string, value: unknown): unknown {
  if (typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0)))
    return { [SPECIAL]: Object.is(value, -0) ? '-0' : String(value) };
  return value instanceof Uint32Array ? Array.from(value) : value;
}

function fromPlain(_: string, value: unknown): unknown {
  const special = (value as Readonly<Record<string, unknown>> | null)?.[SPECIAL];
  return typeof special === 'string' ? Number(special) : value;
}

/** An outcome as JSON from which `readOutcome` makes it again exactly: every number as it was, keys in their order. */
export function outcomeText(outcome: Outcome): string {
  return JSON.stringify(outcome, toPlain);
}

/** What `outcomeText` wrote. */
export function readOutcome(json: string): Outcome {
  const outcome = JSON.parse(json, fromPlain) as Outcome;
  const { course } = outcome;
  return course ? { ...outcome, course: { ...course, good: Uint32Array.from(course.good) } } : outcome;
}
