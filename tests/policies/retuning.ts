import { cell, cold, type Pair } from './cell.ts';

/** Policies that move a setting by what is read. */
export const retuning: Readonly<Record<string, Pair>> = {
  'retune-by-readings': {
    helps: { line: cell({ heater: 'drift: -2 °C/h' }), by: 'throughput_per_h' },
    hurts: { line: cell({ reading: 'bias: 0.25 mm, repeatability: 0.02 mm' }), by: 'throughput_per_h' },
  },
  'retune-at-once': {
    helps: {
      line: cell({ rim: '0.01 mm', reading: 'repeatability: 0.005 mm', disturbances: cold('6 h') }),
      by: 'throughput_per_h',
    },
    hurts: { line: cell({ rim: '0.12 mm' }), by: 'throughput_per_h' },
  },
};
