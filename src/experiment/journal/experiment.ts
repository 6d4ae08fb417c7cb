import { createHash } from 'node:crypto';
import type { Task } from '../worker.ts';

/** What a journal begins with: all that the outcomes of its runs depend on. */
export interface Experiment {
  readonly format: string;
  /** Of mendline. */
  readonly version: string;
  /** Of Node: another one may round a logarithm otherwise. */
  readonly node: string;
  /** SHA-256 of the text. */
  readonly scenario: string;
  /** The same of each, in their order. */
  readonly supplements: readonly string[];
  readonly modules: readonly string[];
  readonly plan: Plan;
}

interface Plan {
  readonly runs: number;
  readonly policies: number;
  readonly seeds: number;
  readonly twins: boolean;
  /** SHA-256 of the tasks as JSON, or of what decides which come. */
  readonly sha256: string;
  /** What decides which runs come, in words; `runs` is then the most there can be. */
  readonly procedure?: string;
}

/** Runs of which each depends on what those before gave, in a way that these settings decide. */
export interface Procedure {
  /** The most runs that there can be. */
  readonly most: number;
  /** What it does, in a few words, such as "a sweep". */
  readonly words: string;
  readonly policies: number;
  /** The most seeds that there can be. */
  readonly seeds: number;
  readonly twins: boolean;
  /** All that decides which runs come, in plain data. */
  readonly settings: unknown;
}

const FORMAT = 'mendline journal 1';

const different = (values: readonly unknown[]) => new Set(values).size;

const sha256Of = (data: unknown) => createHash('sha256').update(JSON.stringify(data)).digest('hex');

function planOf(planned: readonly Task[] | Procedure): Plan {
  if ('settings' in planned) {
    const { most, words, policies, seeds, twins, settings } = planned;
    return { runs: most, policies, seeds, twins, sha256: sha256Of(settings), procedure: words };
  }
  const tasks = planned;
  return {
    runs: tasks.length,
    policies: different(tasks.map(({ policy }) => policy)),
    seeds: different(tasks.map(({ seed }) => seed)),
    // The course is what twins are compared by.
    twins: tasks.some(({ course }) => course === true),
    sha256: sha256Of(tasks),
  };
}

interface Sources {
  readonly version: string;
  readonly scenario: string;
  readonly supplements: readonly string[];
  readonly modules: readonly string[];
}

export function experimentOf(
  { version, scenario, supplements, modules }: Sources,
  planned: readonly Task[] | Procedure,
) {
  const experiment: Experiment = {
    format: FORMAT,
    ...{ version, node: process.version, scenario, supplements, modules },
    plan: planOf(planned),
  };
  return experiment;
}

const inWords = ({ runs, policies, seeds, twins, procedure }: Plan) =>
  `${procedure === undefined ? '' : `${procedure} of at most `}${runs} runs (${policies} policies under ${seeds} seeds${twins ? ', with twins' : ''})`;

const same = (one: unknown, other: unknown) => JSON.stringify(one) === JSON.stringify(other);

/** Why runs of one experiment say nothing of another; null where they are the same. */
export function whyForeign(there: Experiment, here: Experiment): string | null {
  if (there.format !== here.format) return `it is written as "${there.format}", not as "${here.format}"`;
  if (there.version !== here.version)
    return `it was written by mendline ${there.version}, and this is ${here.version}`;
  if (there.node !== here.node) return `it was written under Node ${there.node}, and this is ${here.node}`;
  if (there.scenario !== here.scenario) return 'it is of another scenario, or the scenario was altered since';
  if (!same(there.supplements, here.supplements))
    return 'it is of other supplements, or one was altered since';
  if (!same(there.modules, here.modules)) return 'it is of other policy modules, or one was altered since';
  if (same(there.plan, here.plan)) return null;
  const [one, other] = [inWords(there.plan), inWords(here.plan)];
  return one === other
    ? `it is of other ${here.plan.procedure === undefined ? 'policies, cases or values' : 'settings'}`
    : `it is of ${one}, and ${other} are asked for`;
}

/** What a first record says; null where it is not that of a journal. */
export function readExperiment(json: string): Experiment | null {
  const read = JSON.parse(json) as Partial<Experiment> | null;
  return typeof read?.format === 'string' && read.format.startsWith('mendline journal ')
    ? (read as Experiment)
    : null;
}
