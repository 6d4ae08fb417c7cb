/** So many of so many points in a row beyond so many sigmas on one side of the centre. */
interface Rule {
  readonly needs: number;
  readonly of: number;
  readonly beyond: number;
}

/** Western Electric Company (1956), Statistical Quality Control Handbook: its rules besides the limit of 3 sigma. */
const RULES = {
  '2-of-3': { needs: 2, of: 3, beyond: 2 },
  '4-of-5': { needs: 4, of: 5, beyond: 1 },
  '8-in-a-row': { needs: 8, of: 8, beyond: 0 },
} as const satisfies Record<string, Rule>;

export type RunRule = keyof typeof RULES;
export const RUN_RULES = Object.keys(RULES) as [RunRule, ...RunRule[]];

/** Where a rule changes its mind about a point, sigmas from the centre. */
export const thresholdOf = (rule: RunRule): number => RULES[rule].beyond;

function ones(bits: number): number {
  let count = 0;
  for (let rest = bits; rest > 0; rest &= rest - 1) count++;
  return count;
}

/** What run rules remember: for each rule and side the bits of the last points, 1 for beyond, the newest lowest. */
export const noHistory = (rules: readonly RunRule[]): number[] => new Array<number>(2 * rules.length).fill(0);

/** Brings `history` up by one point, so many sigmas from the centre, and says whether a rule signals. */
export function follow(rules: readonly RunRule[], history: number[], value: number): boolean {
  let signals = false;
  for (let i = 0; i < rules.length; i++) {
    const { needs, of, beyond } = RULES[rules[i]!];
    for (let side = 0; side < 2; side++) {
      const hit = (side === 0 ? value : -value) > beyond;
      const at = 2 * i + side;
      const seen = (history[at]! << 1) | (hit ? 1 : 0);
      if (hit && ones(seen) >= needs) signals = true;
      // Where all must be beyond, a point that is not ends the run.
      history[at] = needs === of && !hit ? 0 : seen & ((1 << (of - 1)) - 1);
    }
  }
  return signals;
}
