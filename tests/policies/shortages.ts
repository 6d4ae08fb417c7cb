import { cell, noFrames, ordered, type Pair } from './cell.ts';

/** Low before each delivery, which comes in time. */
const inTime = ordered({ onHand: 400, at: 150, order: 400, takes: '40 min' });
const PAID = 'price: 2, per-order: 20, expedite: { lead-time: 30 min, price: 0.5 }';

/** Policies for the time while a bought part is short. */
export const shortages: Readonly<Record<string, Pair>> = {
  'hold-while-frames-are-short': {
    helps: { line: cell({ frame: ordered(), disturbances: noFrames('4 h') }), by: 'work_in_progress_parts' },
    hurts: { line: cell({ frame: inTime }), by: 'throughput_per_h' },
  },
  'slow-down-while-frames-are-short': {
    helps: { line: cell({ frame: ordered(), disturbances: noFrames('4 h') }), by: 'work_in_progress_parts' },
    hurts: { line: cell({ frame: inTime }), by: 'throughput_per_h' },
  },
  'build-ahead-without-frames': {
    helps: {
      line: cell({ forming: '15 s', assembly: '20 s', frame: ordered(), disturbances: noFrames('4 h') }),
      by: 'throughput_per_h',
    },
    hurts: {
      line: cell({ frame: ordered({ onHand: 100, at: 90, order: 100, takes: '1 h' }) }),
      by: 'lead_time_s',
    },
  },
  'expedite-while-frames-are-short': {
    helps: {
      line: cell({
        frame: ordered({
          takes: '{ distribution: gamma, mean: 2.5 h, cv: 30 % }',
          more: 'expedite: { lead-time: 30 min }',
        }),
      }),
      by: 'throughput_per_h',
    },
    hurts: {
      line: cell({
        frame: ordered({ onHand: 400, at: 150, order: 400, takes: '40 min', more: PAID }),
      }),
      by: 'stock_cost_per_good',
    },
  },
  'keep-more-frames': {
    helps: { line: cell({ frame: ordered(), disturbances: noFrames('4 h') }), by: 'throughput_per_h' },
    hurts: { line: cell({ frame: ordered({ more: 'holding: 1' }) }), by: 'stock_cost_per_good' },
  },
  'substitute-while-frames-are-short': {
    helps: {
      line: cell({
        frame: ordered(),
        stock:
          '  second frame: { unlimited: true, stands-in-for: frame, features: { groove: { nominal: 120.45 mm, own-sd: 0.15 mm } } }',
        disturbances: noFrames('4 h'),
      }),
      by: 'throughput_per_h',
    },
    hurts: {
      line: cell({
        frame: ordered({ onHand: 400, at: 130, order: 400, takes: '40 min' }),
        stock:
          '  second frame: { unlimited: true, stands-in-for: frame, features: { groove: { nominal: 120.45 mm, own-sd: 0.15 mm } } }',
      }),
      by: 'throughput_per_h',
    },
  },
};
