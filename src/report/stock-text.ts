import type { IdealLine } from '../line/ideal.ts';
import { type StockEstimate, stockEstimates } from '../line/supply/stock-estimate.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { StockSpec } from '../scenario/stocks.ts';
import { type FullSupplierSpec, suppliersOf } from '../scenario/supply/suppliers-of.ts';
import { durationText } from './duration.ts';
import { fixed, percent } from './format.ts';
import { lawText } from './law-text.ts';
import { counted } from './words.ts';

const ASSUMED = {
  poisson: 'if pieces were wanted at random (Poisson) and what is short were waited for and ordered at once',
  normal:
    'if demand over a lead time were normal, pieces wanted at random, and what is short waited for and ordered at once',
  waiting:
    'if pieces were wanted at random (Poisson), lead times exponential, and what is short were waited for',
  lost: 'if pieces were wanted at random (Poisson) and what finds none went without',
} as const satisfies Record<NonNullable<StockEstimate['assumes']>, string>;

/** `1500 ordered at 1900`. */
function ruleText({ reorderAt, order, upTo, review }: StockSpec): string {
  const looked = review === undefined ? '' : `, looked at every ${durationText(review)}`;
  const at = reorderAt === undefined ? '' : ` at ${reorderAt}`;
  if (order !== undefined) return `${order} ordered${at}${looked}`;
  if (reorderAt === undefined && review === undefined) return `each piece taken is ordered, up to ${upTo}`;
  return `ordered up to ${upTo}${at}${looked}`;
}

function termsText({ oneOrderAtATime, leastOrder, lotsOf, inSequence, whenShort }: StockSpec): string[] {
  return [
    ...(leastOrder === undefined ? [] : [`at least ${leastOrder} an order`]),
    ...(lotsOf === undefined ? [] : [`in lots of ${lotsOf}`]),
    ...(oneOrderAtATime ? ['one order out at a time'] : []),
    ...(inSequence ? ['orders come in sequence'] : []),
    ...(whenShort === 'backorders' ? ['what waits for a piece is ordered, too'] : []),
  ];
}

function supplierText(spec: FullSupplierSpec): string {
  const { name, share, rank, leadTime, delivers, incoming, outages } = spec;
  const who =
    name === '' ? '' : `"${name}" (${share === undefined ? `rank ${rank}` : `${percent(share)} %`}) `;
  return [
    `${who}delivers after ${lawText(leadTime!)}`,
    ...(delivers?.sound === undefined ? [] : [`${percent(delivers.sound)} % of the pieces sound`]),
    ...(delivers?.short
      ? [`${percent(delivers.short.chance)} % of the deliveries bring ${percent(delivers.short.share)} %`]
      : []),
    ...(incoming
      ? [
          `inspected${incoming.takes ? ` for ${lawText(incoming.takes)}` : ''}, ${percent(incoming.finds ?? 1)} % of the unsound found`,
        ]
      : []),
    ...(outages ? [`out of service after ${lawText(outages.every)} for ${lawText(outages.for)}`] : []),
  ].join(', ');
}

/** What else may become of a stock and of its orders. */
function besidesText({ expedite, shelfLife, standsInFor }: StockSpec): string[] {
  return [
    ...(expedite ? [`an order that is sped up comes after ${lawText(expedite.leadTime)}`] : []),
    ...(shelfLife ? [`thrown away after ${lawText(shelfLife)}`] : []),
    ...(standsInFor === undefined ? [] : [`may be taken in the place of "${standsInFor}"`]),
  ];
}

/** What is said of a stock that only repairs take. */
function spareText(perSecond: number, fill: number, assumes: StockEstimate['assumes']): string {
  const besides = assumes === 'waiting' ? 'lead times were exponential' : 'each were ordered for';
  return (
    `${percent(1 - fill)} % of the times that one is needed there is none, if those came at random (Poisson) as if all machines ` +
    `worked all the time, one in ${durationText(1 / perSecond)}, and ${besides}`
  );
}

function estimateText({ demand, failures, fill, assumes }: StockEstimate, { whenShort }: StockSpec): string {
  if (fill !== null && failures > 0 && failures === demand) return spareText(failures, fill, assumes);
  if (fill === null) return 'no closed form for this supply';
  // Ordered at once is what waits for a piece under backorders alone; otherwise fewer are on order.
  const ordered = assumes === 'poisson' || assumes === 'normal';
  const unlike = ordered && whenShort !== 'backorders' ? ', as under "when-short: backorders"' : '';
  return `fill rate ${percent(fill)} % ${ASSUMED[assumes!]}${unlike}, ${fixed(demand * 3600, 1)} /h in the ideal line`;
}

/** Each limited stock with its rule and suppliers, and what theory says of it before any run. */
export function stockTexts(scenario: Scenario, ideal: IdealLine): string[] {
  return stockEstimates(scenario, ideal).map((estimate) => {
    const spec = scenario.stocks.find(({ name }) => name === estimate.stock)!;
    const reserve = spec.reserve === undefined ? '' : ` and ${spec.reserve} more in reserve`;
    const onHand = `"${spec.name}": ${counted(spec.onHand!, 'piece')} on hand${reserve}`;
    if (spec.order === undefined && spec.upTo === undefined)
      return [`${onHand}, never ordered`, ...besidesText(spec)].join('; ');
    return [
      `${onHand}, ${[ruleText(spec), ...termsText(spec)].join(', ')}`,
      ...suppliersOf(spec).map(supplierText),
      ...besidesText(spec),
      estimateText(estimate, spec),
    ].join('; ');
  });
}
