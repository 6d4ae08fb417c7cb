import { type SizingSettings, sized } from '../../../src/experiment/sizing/sized.ts';
import type { Target } from '../../../src/experiment/sizing/target.ts';
import { luck, question, settings, size, throughput } from '../../experiment/sizing/made-up.ts';

export const PLAIN = { colour: false, width: 80, title: 'A made-up line' };

interface Asked {
  readonly targets?: readonly Target[];
  readonly names?: readonly string[];
  readonly settings?: Partial<SizingSettings>;
}

/** A sizing of the made-up line. */
export const sample = ({ targets = [throughput(80, 2)], names = ['a', 'b', 'c'], ...rest }: Asked = {}) =>
  sized(
    {
      ...question,
      money: 'crowns a week',
      targets,
      sizes: names.map((name, i) => size(name, [8, 8, 3][i]!, i + 2)),
    },
    { ...settings, ...rest.settings },
    luck(9),
  );

export const leadTime: Target = {
  ...throughput(1, 1),
  ...{ key: 'lead_time_s', name: 'lead time', better: 'lower', value: 600, worth: 60 },
  shown: { unit: 'min', factor: 1 / 60 },
  of: ({ measures }) => 700 - measures.throughput_per_h! * 2,
};

export const flat = (text: string): string => text.replace(/\s+/g, ' ');
