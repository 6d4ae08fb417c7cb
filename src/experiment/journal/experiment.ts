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
  /** SHA-256 of the tasks as JSON. */
  readonly sha256: string;
}

const FORMAT = 'mendline journal 1';

const different = (values: readonly unknown[]) => new Set(values).size;

function planOf(tasks: readonly Task[]): Plan {
  return {
    runs: tasks.length,
    policies: different(tasks.map(({ policy }) => policy)),
    seeds: different(tasks.map(({ seed }) => seed)),
    twins: tasks.some(({ variant }) => variant !== undefined),
    sha256: createHash('sha256').update(JSON.stringify(tasks)).digest('hex'),
  };
}

interface Sources {
  readonly version: string;
  readonly scenario: string;
  readonly supplements: readonly string[];
  readonly modules: readonly string[];
}

export function experimentOf({ version, scenario, supplements, modules }: Sources, tasks: readonly Task[]) {
  const experiment: Experiment = {
    format: FORMAT,
    ...{ version, node: process.version, scenario, supplements, modules },
    plan: planOf(tasks),
  };
  return experiment;
}

const inWords = ({ runs, policies, seeds, twins }: Plan) =>
  `${runs} runs (${policies} policies under ${seeds} seeds${twins ? ', with twins' : ''})`;

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
  return one === other ? 'it is of other policies' : `it is of ${one}, and ${other} are asked for`;
}

/** What a first record says; null where it is not that of a journal. */
export function readExperiment(json: string): Experiment | null {
  const read = JSON.parse(json) as Partial<Experiment> | null;
  return typeof read?.format === 'string' && read.format.startsWith('mendline journal ')
    ? (read as Experiment)
    : null;
}
