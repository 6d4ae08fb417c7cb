import type { z } from 'zod';
import { changeRate, duration, entry, level, measured, positiveDuration } from '../fields.ts';
import type { Quantity } from '../units.ts';

const spread = measured.refine(({ value }) => value >= 0, { error: 'a standard deviation is not negative' });

const wander = entry({
  sd: spread.describe('standard deviation of the wandering in the long run'),
  'pull-back': positiveDuration.describe('time in which a deviation fades to 37 % of itself'),
});

const whenCold = entry({
  after: duration.describe('a machine that idled for longer than this is cold'),
  by: measured.describe('how much the setting is off at its first sheet then'),
  fades: positiveDuration.describe('time in which that fades to 37 % of itself'),
});

const moves = entry({
  step: measured
    .refine(({ value }) => value > 0, { error: 'a step is above zero' })
    .optional()
    .describe('the target moves by whole steps; left out, freely'),
  from: level.optional().describe('lowest target'),
  to: level.optional().describe('highest target'),
  delay: duration.default(0).describe('time until a new target is reached'),
});

/** A setting of a forming station with what moves it. */
export const setting = entry({
  target: level,
  'cycle-sd': spread.optional().describe('standard deviation from cycle to cycle'),
  wander: wander.optional().describe('slow wandering about the target, which is pulled back to it'),
  drift: changeRate.optional().describe('steady change from the start of the run, or from the last fix, on'),
  'sensor-bias': measured
    .optional()
    .describe('how much too high the sensor reads: the actual value is as much too low'),
  'when-cold': whenCold.optional().describe('how a machine that idled is off at first'),
  moves: moves.optional().describe('what a policy may do to the target; left out, anything at once'),
}).superRefine(({ target, cycleSd, wander, drift, sensorBias, whenCold, moves }, context) => {
  const given: readonly (readonly [readonly string[], Pick<Quantity, 'dimension'> | undefined])[] = [
    [['cycle-sd'], cycleSd],
    [['wander', 'sd'], wander?.sd],
    [['drift'], drift],
    [['sensor-bias'], sensorBias],
    [['when-cold', 'by'], whenCold?.by],
    [['moves', 'step'], moves?.step],
    [['moves', 'from'], moves?.from],
    [['moves', 'to'], moves?.to],
  ];
  const other = given.filter(([, it]) => it !== undefined && it.dimension !== target.dimension);
  for (const [path] of other) {
    const message = `"${path.at(-1)}" and "target" have units of different kinds`;
    context.addIssue({ code: 'custom', message, path: [...path] });
  }
  if (other.length > 0 || !moves) return;
  const outside = (path: string, message: string) =>
    context.addIssue({ code: 'custom', message, path: ['moves', path] });
  if (moves.from && moves.from.value > target.value) outside('from', '"from" lies above the target');
  if (moves.to && moves.to.value < target.value) outside('to', '"to" lies below the target');
});

export type SettingSpec = z.output<typeof setting> & { readonly name: string };
