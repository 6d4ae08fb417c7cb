import type { ConditionSpec } from '../../scenario/conditions.ts';
import type { Meet, Told, View } from './view.ts';

/** Follows several conditions as one: `holds` says whether they do together, `heeds` whether a signal of one of them counts. */
function together(
  parts: readonly ConditionSpec[],
  {
    holds,
    heeds,
  }: {
    readonly holds: (each: readonly boolean[]) => boolean;
    readonly heeds: (each: readonly boolean[], part: number) => boolean;
  },
  view: View,
  told: Told,
  meet: Meet,
): void {
  const each = parts.map(() => false);
  const known = parts.map(() => false);
  /** Null until it is known. It is said once then: whoever follows it would act on a first word that is taken back. */
  let before: boolean | null = null;
  // Several that change at one instant are looked at when all have.
  let settles = true;
  function settle(): void {
    settles = false;
    const now = holds(each);
    // Whatever those say that have said nothing yet.
    const sure = before !== null || now === holds(each.map((one, i) => one || !known[i]));
    if (!sure || now === before) return;
    before = now;
    told.holds(now);
  }
  for (const [i, part] of parts.entries()) {
    meet(part, view, {
      holds: (now) => {
        each[i] = now;
        known[i] = true;
        if (settles) return;
        settles = true;
        view.controls.after(0, settle);
      },
      signals: () => {
        if (heeds(each, i)) told.signals();
      },
    });
  }
  settle();
}

/** Holds while all of them do; of one that signals, while all the others do. */
export function meetAll(parts: readonly ConditionSpec[], view: View, told: Told, meet: Meet): void {
  const holds = (each: readonly boolean[]) => each.every((one) => one);
  const heeds = (each: readonly boolean[], part: number) => each.every((one, i) => one || i === part);
  together(parts, { holds, heeds }, view, told, meet);
}

/** Holds while any of them does; signals whenever one does. */
export function meetAny(parts: readonly ConditionSpec[], view: View, told: Told, meet: Meet): void {
  together(parts, { holds: (each) => each.some((one) => one), heeds: () => true }, view, told, meet);
}
