import { describe, expect, it } from 'vitest';
import { Streams } from '../../../src/kernel/streams.ts';
import { choiceOf } from '../../../src/line/supply/choice.ts';
import { Supplier } from '../../../src/line/supply/supplier.ts';
import type { FullSupplierSpec } from '../../../src/scenario/supply/suppliers-of.ts';

const streams = new Streams(1);
const leadTime = { distribution: 'constant', value: 5 } as const;
function choosing(keys: readonly Partial<FullSupplierSpec>[]) {
  const specs = keys.map((own, i) => ({ name: `s${i}`, leadTime, ...own }));
  const suppliers = specs.map((spec) => new Supplier(spec, false, (purpose) => streams.of(purpose)));
  return { suppliers, choose: choiceOf(specs, suppliers, () => streams.of('supplier')) };
}

describe('the choice of a supplier', () => {
  it('is none where there is one', () => {
    expect(choosing([{}]).choose()).toBe(0);
  });

  it('by share gives each its share of the orders', () => {
    const { choose } = choosing([{ share: 0.5 }, { share: 0.2 }, { share: 0.3 }]);
    const times = [0, 0, 0];
    for (let i = 0; i < 10_000; i++) times[choose()]!++;
    for (const [i, share] of [0.5, 0.2, 0.3].entries()) {
      const error = Math.sqrt(share * (1 - share) * 10_000);
      expect(Math.abs(times[i]! - share * 10_000)).toBeLessThan(3.5 * error);
    }
  });

  it('by rank is the first that is not out of service, and the first of all where none is', () => {
    const { suppliers, choose } = choosing([{ rank: 2 }, { rank: 1 }]);
    expect(choose()).toBe(1);
    suppliers[1]!.cutOff();
    expect(choose()).toBe(0);
    suppliers[0]!.cutOff();
    expect(choose()).toBe(1);
    suppliers[0]!.supply();
    expect(choose()).toBe(0);
  });
});
