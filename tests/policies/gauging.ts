import { cell, cold, type Pair } from './cell.ts';

/** Policies that go by what each part is like. */
export const gauging: Readonly<Record<string, Pair>> = {
  'scrap-what-reads-off': {
    helps: {
      line: cell({ forming: '12 s', assembly: '20 s', rim: '0.25 mm', groove: '0.02 mm' }),
      by: 'throughput_per_h',
    },
    hurts: { line: cell({ gauging: '24 s' }), by: 'throughput_per_h' },
  },
  'look-closer-after-misfits': {
    helps: {
      line: cell({
        forming: '10 s',
        gauging: '11 s',
        assembly: '20 s',
        groove: '0.02 mm',
        fits: 'least: 0.1 mm, most: 0.6 mm',
        rim: '0.1 mm',
        disturbances: cold('4 h', '-7 °C'),
      }),
      by: 'throughput_per_h',
    },
    hurts: { line: cell({ gauging: '24 s', groove: '0.3 mm' }), by: 'throughput_per_h' },
  },
  'skip-gauging-while-parts-wait': {
    helps: { line: cell({ gauging: '24 s', every: 1, offLimits: 'scrap' }), by: 'throughput_per_h' },
    hurts: {
      line: cell({
        forming: '12 s',
        gauging: '16 s',
        every: 1,
        offLimits: 'scrap',
        assembly: '20 s',
        rim: '0.25 mm',
      }),
      by: 'fit_rate',
    },
  },
  'choose-for-each-frame': {
    helps: { line: cell({ assembly: '24 s', rim: '0.2 mm', groove: '0.2 mm' }), by: 'throughput_per_h' },
    hurts: { line: cell({ assembly: '20 s' }), by: 'throughput_per_h' },
  },
  'rework-misfits': {
    helps: { line: cell({ bench: true, disturbances: cold('6 h', '-8 °C') }), by: 'throughput_per_h' },
    hurts: {
      line: cell({ bench: true, assembly: '30 s', groove: '0.2 mm' }),
      by: 'lead_time_s',
    },
  },
};
