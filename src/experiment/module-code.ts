import { PolicyModuleFault } from '../policy/module/calls.ts';
import { startModule } from '../policy/module/start.ts';
import { thrownInWords } from '../policy/module/thrown.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { failedForeignPromise, heedForeignPromises } from './foreign-promises.ts';
import { ModulePulses } from './module-pulse.ts';
import { type PolicyModuleFile, PolicyModuleLoader } from './policy-module.ts';
import type { Code } from './simulate.ts';

/** Policy modules as a worker is given them. */
export interface ModulesAtWork {
  readonly files: readonly PolicyModuleFile[];
  /** How many runs are planned, and the memory of their pulses. */
  readonly runs: number;
  readonly pulses: SharedArrayBuffer;
  /** Time that a call of a module may take, s. */
  readonly most: number;
}

/** Loads policy modules in a worker, anew for each run, so that nothing a module keeps passes from one run to another. */
export class CodeOfModules {
  private readonly modules: ModulesAtWork;
  private readonly scenario: Scenario;
  private readonly pulses: ModulePulses;
  private readonly loaders = new Map<string, { path: string; loader: PolicyModuleLoader }>();

  constructor(modules: ModulesAtWork, scenario: Scenario) {
    this.modules = modules;
    this.scenario = scenario;
    this.pulses = new ModulePulses(modules.runs, modules.pulses);
    for (const file of modules.files)
      this.loaders.set(file.name, { path: file.path, loader: new PolicyModuleLoader(file) });
    heedForeignPromises();
  }

  /** What puts the policy's module to work in one run; undefined where the policy has none. */
  of(policy: string, run: number): Code | undefined {
    const own = this.loaders.get(policy);
    if (own === undefined) return undefined;
    const { path, loader } = own;
    return (controls) =>
      startModule(loader.load(this.modules.most), controls, this.scenario, path, this.pulses.of(run));
  }

  /**
   * To be waited for after each run.
   * @throws PolicyModuleFault where the module of the policy left a promise behind that failed
   */
  async settle(policy: string): Promise<void> {
    const own = this.loaders.get(policy);
    if (own === undefined) return;
    const failed = await failedForeignPromise();
    if (failed === null) return;
    const { warmUp, length } = this.scenario.run;
    const what = `had left a promise that failed${thrownInWords(failed.reason, own.path)}; a policy acts at once, without promises`;
    throw new PolicyModuleFault(own.path, warmUp + length, what);
  }
}
