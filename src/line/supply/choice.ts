import type { Stream } from '../../kernel/streams.ts';
import type { FullSupplierSpec } from '../../scenario/supply/suppliers-of.ts';
import type { Supplier } from './supplier.ts';

/** Which of the suppliers, by its place among them, the next order goes to. */
export type Choice = () => number;

/** The first by rank that is not out of service; the first of all where none is. */
function byRank(specs: readonly FullSupplierSpec[], suppliers: readonly Supplier[]): Choice {
  const ranked = specs.map((_, i) => i).sort((a, b) => specs[a]!.rank! - specs[b]!.rank!);
  return () => ranked.find((i) => !suppliers[i]!.isOut) ?? ranked[0]!;
}

/** Drawn anew for each order. */
function byShare(specs: readonly FullSupplierSpec[], luck: Stream): Choice {
  return () => {
    let left = luck();
    for (const [i, { share }] of specs.entries()) {
      left -= share!;
      if (left < 0) return i;
    }
    return specs.length - 1;
  };
}

/** @param luck a stream of its own, for shares */
export function choiceOf(
  specs: readonly FullSupplierSpec[],
  suppliers: readonly Supplier[],
  luck: () => Stream,
): Choice {
  if (specs.length === 1) return () => 0;
  return specs[0]!.rank === undefined ? byShare(specs, luck()) : byRank(specs, suppliers);
}
