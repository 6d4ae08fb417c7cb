import type { StockSpec } from './stocks.ts';

type Kin = Pick<StockSpec, 'name' | 'standsInFor'>;

/** A stock and all that it may stand in for, be it by way of others; itself first. Where they go in a circle, each once. */
export function originalsOf(name: string, stocks: readonly Kin[]): string[] {
  const found = new Set<string>();
  let at: string | undefined = name;
  while (at !== undefined && !found.has(at)) {
    found.add(at);
    at = stocks.find((stock) => stock.name === at)?.standsInFor;
  }
  return [...found];
}

/** A stock and all that may stand in for it, be it by way of others; itself first, the others in their order. */
export const kindsOf = (name: string, stocks: readonly Kin[]): string[] => [
  name,
  ...stocks.flatMap((stock) =>
    stock.name !== name && originalsOf(stock.name, stocks).includes(name) ? [stock.name] : [],
  ),
];
