import { createContext, runInContext, Script } from 'node:vm';
import type { PolicyModule } from '../policy/module/cell.ts';
import { lineIn, thrownInWords } from '../policy/module/thrown.ts';
import { label } from '../scenario/fields.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { HARDEN } from './module-globals.ts';

/** A policy module cannot be read, or is none. */
export class PolicyModuleError extends Error {
  constructor(path: string, why: string) {
    super(`${path}: ${why}`);
    this.name = 'PolicyModuleError';
  }
}

/** A policy module as read from its file, ready to be loaded as often as there are runs. */
export interface PolicyModuleFile {
  readonly path: string;
  /** Of the text as it stands in the file. */
  readonly sha256: string;
  /** The text as plain JavaScript; lines stay the lines they were. */
  readonly code: string;
  /** The policy's name. */
  readonly name: string;
}

const SHAPE = 'export default { name: "...", start(cell) { ... } }';

/** What came of loading that is no policy, in words; null where it is one. */
function wrongWith(given: unknown): string | null {
  if (given === undefined) return `has no default export; expected ${SHAPE}`;
  if (typeof given !== 'object' || given === null)
    return `its default export is ${given === null ? 'null' : `a ${typeof given}`}; expected ${SHAPE}`;
  const { name, start } = given as Partial<PolicyModule>;
  if (name === undefined) return `its policy has no "name"; expected ${SHAPE}`;
  const read = label.safeParse(name);
  if (!read.success) return `its policy's "name": ${read.error.issues[0]!.message}`;
  if (typeof start !== 'function') return `its policy has no function "start"; expected ${SHAPE}`;
  return null;
}

/**
 * Loads policy modules from one file. Each time the code runs anew in a context of its own that has the language alone:
 * no clock, no chance, no way to the program or out of it. That keeps a policy honest and its runs repeatable; it is no
 * wall against code that means harm, which nobody should load.
 */
export class PolicyModuleLoader {
  private readonly path: string;
  private readonly script: Script;

  /** @throws PolicyModuleError */
  constructor({ path, code }: Pick<PolicyModuleFile, 'path' | 'code'>) {
    this.path = path;
    try {
      this.script = new Script(code, { filename: path });
    } catch (error) {
      const { message, stack } = error as Error;
      throw new PolicyModuleError(path, `${message}${lineIn(stack, path)}`);
    }
  }

  /**
   * @param most time that loading may take, s
   * @throws PolicyModuleError
   */
  load(most: number): PolicyModule {
    const context = createContext(Object.create(null) as object, {
      codeGeneration: { strings: false, wasm: false },
      microtaskMode: 'afterEvaluate',
    });
    HARDEN.runInContext(context);
    const timeout = most * 1000;
    try {
      this.script.runInContext(context, { timeout });
      const given: unknown = runInContext('exports.default', context, { timeout });
      const wrong = wrongWith(given);
      if (wrong !== null) throw new PolicyModuleError(this.path, wrong);
      return given as PolicyModule;
    } catch (thrown) {
      if (thrown instanceof PolicyModuleError) throw thrown;
      throw new PolicyModuleError(this.path, this.said(thrown, most));
    }
  }

  private said(thrown: unknown, most: number): string {
    if ((thrown as NodeJS.ErrnoException | null)?.code === 'ERR_SCRIPT_EXECUTION_TIMEOUT')
      return `did not load within ${most} s, as if it looped for ever`;
    return `threw as it was loaded${thrownInWords(thrown, this.path)}`;
  }
}

/**
 * The scenario with the policies of modules behind its own.
 * @throws PolicyModuleError where a name is taken
 */
export function withModules(scenario: Scenario, modules: readonly PolicyModuleFile[]): Scenario {
  const policies = [...scenario.policies];
  for (const { name, path } of modules) {
    if (policies.some((policy) => policy.name === name))
      throw new PolicyModuleError(path, `there is a policy "${name}" already; give this one another name`);
    policies.push({ name, responses: [] });
  }
  return { ...scenario, policies };
}
