import { type PolicyModuleFile, withModules } from '../experiment/policy-module.ts';
import { MODULE_TIMEOUT } from '../experiment/runner.ts';
import type { PolicySpec, Scenario } from '../scenario/scenario.ts';

/** What the command line says of policy modules. */
export interface GivenModules {
  readonly policyModule?: readonly string[];
  readonly moduleTimeout?: number;
}

/** Policy modules that the command names, and the policies of the scenario with theirs behind. */
export interface Modules {
  readonly files: readonly PolicyModuleFile[];
  readonly policies: readonly PolicySpec[];
  /** Time that a call of a module may take, s. */
  readonly timeout: number;
}

/**
 * Reads the policy modules that the command names.
 * @throws PolicyModuleError
 */
export async function modulesOf(
  { policyModule = [], moduleTimeout: timeout = MODULE_TIMEOUT }: GivenModules,
  scenario: Scenario,
): Promise<Modules> {
  const files: PolicyModuleFile[] = [];
  const paths = policyModule;
  if (paths.length > 0) {
    // Loaded only now: the compiler takes its time, and most commands need none.
    const { readPolicyModule } = await import('../experiment/policy-module-file.ts');
    for (const path of paths) files.push(await readPolicyModule(path, timeout));
  }
  return { files, policies: withModules(scenario, files).policies, timeout };
}
