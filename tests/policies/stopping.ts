import { cell, cold, type Pair } from './cell.ts';

/** Policies that stop a station and put it right. */
export const stopping: Readonly<Record<string, Pair>> = {
  'stop-on-misfits': {
    helps: { line: cell({ disturbances: cold('6 h') }), by: 'throughput_per_h' },
    hurts: { line: cell({ disturbances: cold('15 min') }), by: 'throughput_per_h' },
  },
  'stop-on-an-ewma-chart': {
    helps: { line: cell({ disturbances: cold('6 h') }), by: 'throughput_per_h' },
    hurts: {
      line: cell({ heater: 'wander: { sd: 2.5 °C, pull-back: 40 min }' }),
      by: 'throughput_per_h',
    },
  },
  'stop-on-low-capability': {
    helps: { line: cell({ disturbances: cold('6 h') }), by: 'throughput_per_h' },
    hurts: { line: cell({ rim: '0.15 mm' }), by: 'throughput_per_h' },
  },
  'change-the-blade-by-readings': {
    helps: {
      line: cell({ tab: 'own-sd: 0.01 mm, wear: { per: 1000, shift: 0.3 mm }' }),
      by: 'throughput_per_h',
    },
    hurts: {
      line: cell({
        forming: '18 s',
        trimming: '20 s',
        tab: 'own-sd: 0.05 mm, wear: { per: 1000, shift: 0.001 mm }',
      }),
      by: 'throughput_per_h',
    },
  },
};
