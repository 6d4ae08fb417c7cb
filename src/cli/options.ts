/** An option that takes one value, given once. */
export const word = (describe: string) => ({ type: 'string', requiresArg: true, describe }) as const;
/** One that takes a whole number; `sound-options.ts` has the most it may be. */
export const count = (describe: string) => ({ type: 'number', requiresArg: true, describe }) as const;
/** One that takes a value each time it is given. */
export const several = (describe: string) =>
  ({ type: 'string', array: true, nargs: 1, requiresArg: true, describe }) as const;
/** One that is there or not. */
export const flag = (describe: string) => ({ type: 'boolean', default: false, describe }) as const;

export const json = flag('print JSON instead of text');
export const seeds = count('runs for each policy; else what the scenario says');
export const workers = count('worker threads; by default one a core');
export const out = word('folder for the report; else reports/ and the name of FILE');
export const resume = flag('go on from the runs that an interrupted command left');
export const policy = word('name of the policy; by default the first');
export const seed = { ...count('which run'), default: 1 } as const;
export const by = word('measure that decides; else throughput');
export const only = several('name of a policy to compare with the first; by default all');
export const joined = {
  with: several('supplement in YAML to join to FILE, with policies or disturbances'),
} as const;
export const modules = {
  'policy-module': several('TypeScript or JavaScript file with a policy as code, which is run'),
  'module-timeout': count('seconds that one call of a policy module may take; else 10'),
} as const;
