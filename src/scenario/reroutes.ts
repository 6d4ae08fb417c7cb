import type { ResponseSpec } from './responses.ts';

/** The ways that policies may send the parts of a station besides its own: from where and to where. */
export const reroutesIn = ({
  policies,
}: {
  readonly policies: readonly { readonly responses: readonly ResponseSpec[] }[];
}): [at: string, to: string][] =>
  policies.flatMap(({ responses }) =>
    responses.flatMap((it): [string, string][] => (it.do === 'reroute' ? [[it.at, it.to]] : [])),
  );
