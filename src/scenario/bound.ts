import type { PolicySpec } from './scenario.ts';

/** Whether a policy foresees: then it is a bound, and not something that a line could do. */
export const isBound = ({ responses }: Pick<PolicySpec, 'responses'>): boolean =>
  responses.some((response) => response.do === 'foresee');

/** The name of the policy that is the bound; null where there is none. */
export const boundOf = (policies: readonly PolicySpec[]): string | null =>
  policies.find(isBound)?.name ?? null;

/** The same policies, the bound last. */
export const boundLast = <P extends Pick<PolicySpec, 'responses'>>(policies: readonly P[]): P[] => [
  ...policies.filter((policy) => !isBound(policy)),
  ...policies.filter(isBound),
];
