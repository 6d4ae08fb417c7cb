/** Who is highest from a level on. */
export interface Leader {
  readonly who: number;
  readonly from: number;
}

/** The first of the highest; who is `before` stays, if it is among them. */
function highest(values: readonly number[], among: readonly number[], before: number | undefined): number {
  const top = Math.max(...among.map((who) => values[who]!));
  const found = among.filter((who) => values[who] === top);
  return before !== undefined && found.includes(before) ? before : found[0]!;
}

/**
 * Who is highest where, in rising order of level: the upper edge of lines that are straight between the levels. Of
 * several that are level, it is who is highest right after.
 * @param levels in rising order, at least one
 * @param values by who and level, at least of one
 */
export function leadersOf(levels: readonly number[], values: readonly (readonly number[])[]): Leader[] {
  const all = values.map((_, who) => who);
  const found: Leader[] = [];
  const lead = (who: number, from: number) => {
    if (found.at(-1)?.who !== who) found.push({ who, from });
  };
  const startOf = (i: number) => values.map((own) => own[i]!);
  for (let i = 0; i + 1 < levels.length; i++) {
    const start = startOf(i);
    const slope = startOf(i + 1).map((end, who) => end - start[who]!);
    const before = found.at(-1)?.who;
    const top = Math.max(...start);
    const level = all.filter((who) => start[who] === top);
    let leader = highest(slope, level, before);
    lead(leader, levels[i]!);
    for (;;) {
      // Only who rises faster can overtake.
      const faster = all.filter((who) => slope[who]! > slope[leader]!);
      const share = (who: number) => (start[leader]! - start[who]!) / (slope[who]! - slope[leader]!);
      const next = Math.min(...faster.map(share));
      // Who only draws level at the end of the way leads from there on, if there is a way on.
      if (!(next < 1)) break;
      leader = highest(
        slope,
        faster.filter((who) => share(who) === next),
        undefined,
      );
      lead(leader, levels[i]! + next * (levels[i + 1]! - levels[i]!));
    }
  }
  if (found.length === 0) lead(highest(startOf(0), all, undefined), levels[0]!);
  return found;
}
