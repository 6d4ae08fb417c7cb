import { simulate } from '../../../src/experiment/simulate.ts';
import type { Outcome } from '../../../src/line/outcome.ts';
import { birthDeath, meanOver } from './birth-death.ts';
import { type Case, caseOf } from './case.ts';
import { longRun, type Moves } from './chain.ts';
import { BLANKS, exponential, type Keys, s, scenarioText } from './scenario-text.ts';
import { outcome } from './see.ts';

/** Machines that need a spare for each repair, times in s. */
interface Shop {
  readonly machines: number;
  readonly spares: number;
  readonly life: number;
  /** Mean time from order to delivery. */
  readonly lead: number;
  /** Whether a repair that waits is ordered for, so that each failure orders one; else each piece taken does. */
  readonly owed: boolean;
}

const SOURCE =
  'Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, machine repair with spares (from memory)';

const stockOf = ({ spares, lead, owed }: Shop) => ({
  ...{ 'on-hand': spares, 'up-to': spares, 'lead-time': exponential(lead) },
  'when-short': owed ? 'backorders' : 'waits',
});

const modeOf = ({ life }: Shop, spare: string, repair: Keys | string) => ({
  ...{ every: exponential(life), counted: 'working', cycle: 'resumes', repair, spare },
});

/** They never lack work and are never blocked, so that they work whenever they are up. */
const work = (shop: Shop, keys: Keys) => ({
  does: 'work',
  takes: 'blank',
  cycle: s(shop.life),
  to: 'good',
  ...keys,
});

const shopText = (shop: Shop, repair: Keys | string, crew?: string) =>
  scenarioText(20 * shop.life, {
    stock: { ...BLANKS, element: stockOf(shop) },
    stations: {
      shop: work(shop, {
        machines: shop.machines,
        breakdowns: { burnt: { ...modeOf(shop, 'element', repair), ...(crew && { crew }) } },
      }),
    },
    ...(crew && { crew: { [crew]: { number: 1 } } }),
  });

const what = ({ machines, spares, life, lead }: Shop) =>
  `${machines} machines that fail every ${life} s of work, ${spares === 1 ? 'a spare' : `${spares} spares`} ordered one for one for ${lead} s`;

const OPTION = { true: '"when-short: backorders"', false: '' } as const;
const available = (of: Outcome): number => of.stateShares.shop!.working;

/** The chances of so many failures that are not made good: pieces on order, or repairs that wait to order theirs. */
const short = ({ machines, spares, life, lead, owed }: Shop) =>
  birthDeath(
    (n) => Math.min(machines, machines + spares - n) / life,
    (n) => (owed ? n : Math.min(n, spares)) / lead,
    machines + spares,
  );

/** Repairs that take no time. */
function atOnce(shop: Shop): Case {
  const { machines, spares, owed } = shop;
  const p = short(shop);
  const waiting = meanOver(p, (n) => Math.max(0, n - spares));
  const working = (n: number) => Math.min(machines, machines + spares - n);
  const filled = meanOver(p, (n) => (n < spares ? working(n) : 0)) / meanOver(p, working);
  return caseOf<Outcome>({
    id: `spares ${machines}/${spares}${owed ? '' : ' taken'}`,
    what: `${what(shop)}, repair in no time${owed ? '' : ', ordered as taken'}`,
    source: SOURCE,
    option: OPTION[`${owed}`],
    length: 2_000_000,
    scenario: shopText(shop, s(0)),
    see: outcome,
    values: [
      { quantity: 'availability', expected: 1 - waiting / machines, of: available },
      {
        ...{ quantity: 'number waiting for a spare', expected: waiting, sharp: 0.02 },
        of: (of) => machines * of.stateShares.shop!.awaiting_spare,
      },
      {
        quantity: 'share of failures that find a spare',
        expected: filled,
        of: (of) => of.stocks.element!.fill_rate!,
      },
      {
        ...{ quantity: 'mean on order', unit: 'pieces', sharp: 0.02 },
        expected: meanOver(p, (n) => (owed ? n : Math.min(n, spares))),
        of: (of) => of.stocks.element!.mean_on_order_pieces!,
      },
    ],
  });
}

/** Moves that happen at all. */
const likely = (moves: Moves): Moves => moves.filter(([, rate]) => rate > 0);

/** Repairs by one technician, who is called when the spare is there: by pieces owed or on order, and repairs called for. */
function byOne(shop: Shop, repair: number): Case {
  const { machines, spares, life, lead } = shop;
  const waiting = (n: number) => Math.max(0, n - spares);
  const mean = (of: (n: number, called: number) => number) =>
    longRun(
      [0, 0],
      ([n, called]) => {
        const up = machines - waiting(n!) - called!;
        return likely([
          [[n! + 1, n! < spares ? called! + 1 : called!], up / life],
          [[n! - 1, n! > spares ? called! + 1 : called!], n! / lead],
          [[n!, called! - 1], called! > 0 ? 1 / repair : 0],
        ]);
      },
      ([n, called]) => of(n!, called!),
    );
  return caseOf<Outcome>({
    id: `spares ${machines}/${spares} technician`,
    what: `${what(shop)}, repaired in ${repair} s by one technician`,
    source: `${SOURCE}; its Markov chain in two numbers, solved`,
    option: OPTION.true,
    length: 2_000_000,
    scenario: shopText(shop, exponential(repair), 'fitter'),
    see: outcome,
    values: [
      {
        quantity: 'availability',
        expected: mean((n, called) => machines - waiting(n) - called) / machines,
        of: available,
      },
      {
        ...{ quantity: 'number waiting for a spare', expected: mean(waiting), sharp: 0.03 },
        of: (of) => machines * of.stateShares.shop!.awaiting_spare,
      },
      {
        ...{ quantity: 'number waiting for the technician', sharp: 0.03 },
        expected: mean((_, called) => Math.max(0, called - 1)),
        of: (of) => machines * of.stateShares.shop!.awaiting_technician,
      },
    ],
  });
}

/** Two pieces at each machine: all that is short is gathered at as few machines as can be, or is not. */
function gathered(shop: Shop): Case {
  const { machines, spares, life, lead } = shop;
  const waiting = (n: number) => Math.max(0, n - spares);
  const up = ([a, b]: readonly number[]) => machines - Math.max(waiting(a!), waiting(b!));
  const expected = longRun(
    [0, 0],
    (state) => {
      const [a, b] = state as [number, number];
      return likely([
        [[a + 1, b], up(state) / life],
        [[a, b + 1], up(state) / life],
        [[a - 1, b], a / lead],
        [[a, b - 1], b / lead],
      ]);
    },
    up,
  );
  const names = Array.from({ length: machines }, (_, i) => `m${i + 1}`);
  const machine = work(shop, {
    breakdowns: { one: modeOf(shop, 'first', s(0)), other: modeOf(shop, 'second', s(0)) },
  });
  const take = (spare: string) => ({ do: 'cannibalise', spare, from: names });
  return caseOf<Outcome>({
    id: `spares ${machines}/${spares} gathered`,
    what: `${what(shop)}, of each of two kinds; what is short is gathered at as few machines as can be`,
    source:
      'C. C. Sherbrooke, Optimal Inventory Modeling of Systems, cannibalisation (from memory); its Markov chain, solved',
    option: `${OPTION.true}, "do: cannibalise"`,
    length: 1_000_000,
    scenario: scenarioText(20 * life, {
      stock: { ...BLANKS, first: stockOf(shop), second: stockOf(shop) },
      stations: Object.fromEntries(names.map((name) => [name, machine])),
      policies: { gather: [take('first'), take('second')] },
    }),
    see: (scenario, seed) => simulate(scenario, 'gather', seed),
    values: [
      {
        quantity: 'availability',
        expected: expected / machines,
        of: ({ stateShares }) => names.reduce((sum, name) => sum + stateShares[name]!.working, 0) / machines,
      },
    ],
  });
}

const shop = (machines: number, spares: number, life: number, lead: number, owed = true): Shop => ({
  ...{ machines, spares, life, lead, owed },
});

export const SPARES: readonly Case[] = [
  atOnce(shop(3, 1, 100, 60)),
  atOnce(shop(5, 2, 100, 60)),
  atOnce(shop(10, 3, 100, 40)),
  atOnce(shop(5, 2, 100, 60, false)),
  atOnce(shop(3, 1, 100, 60, false)),
  byOne(shop(5, 2, 100, 60), 15),
  byOne(shop(4, 1, 100, 40), 20),
  gathered(shop(8, 1, 100, 60)),
  gathered(shop(12, 2, 100, 40)),
];
