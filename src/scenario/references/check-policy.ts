import type { Timing } from '../in-force.ts';
import type { ResponseSpec } from '../responses.ts';
import type { StockSpec } from '../stocks.ts';
import { keptAs } from '../supply/kept-as.ts';
import { checkCircles } from './check-circles.ts';
import { checkEnding, whileLow } from './check-ending.ts';
import { checkInForce } from './check-in-force.ts';
import { checkResponse } from './check-response.ts';
import { checkRoundTrips } from './check-round-trips.ts';
import type { Checker, Raw } from './checker.ts';

/** What a policy does to a thing only once: the key that names the thing, and why not twice. */
function doneOnce(it: ResponseSpec): { key: string; thing: string; why: string } | undefined {
  if (it.do === 'retune') {
    const why = `this policy retunes "${it.setting}" already; two would undo each other`;
    return { key: 'setting', thing: it.setting, why };
  }
  if (it.do === 'build-ahead') {
    const why = `this policy builds ahead at "${it.at}" already; take one of them out`;
    return { key: 'at', thing: it.at, why };
  }
  if (it.do === 'keep') {
    const why = `this policy keeps "${it.stock}" already; say there all of how it does`;
    return { key: 'stock', thing: it.stock, why };
  }
  return undefined;
}

/** The stock as the policy keeps it; undefined where it is unknown or has problems of its own. */
function kept(check: Checker, name: string, responses: readonly ResponseSpec[]): StockSpec | undefined {
  const stock = check.stock(name);
  const keeping = responses.find((it) => it.do === 'keep' && it.stock === name);
  return stock && keeping?.do === 'keep' ? keptAs(stock, keeping) : stock;
}

/** Whether each response of a policy can do what it says, and none undoes another. */
export function checkPolicy(check: Checker, { name, responses }: Raw['policies'][number]): void {
  const done = new Set<string>();
  const places = check.names.places.get(name);
  const pathOf = (i: number) => ['policies', name, places?.[i] ?? i];
  checkCircles(check, responses as readonly Timing[], pathOf);
  checkRoundTrips(check, responses, pathOf);
  for (const [i, response] of responses.entries()) {
    const path = pathOf(i);
    checkResponse(check, response, path);
    const low = response.do === 'hold' ? whileLow(response) : undefined;
    if (low) {
      const stock = kept(check, low.when.stock, responses);
      if (stock) checkEnding(check, low, stock, path);
    }
    checkInForce(check, response, path, { responses, whole: places === undefined });
    const once = doneOnce(response);
    if (once === undefined) continue;
    const { key, thing, why } = once;
    if (done.has(`${response.do} ${thing}`)) check.say([...path, key], why);
    done.add(`${response.do} ${thing}`);
  }
}
