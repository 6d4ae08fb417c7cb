import type { Impairment } from '../../line/operations/mark.ts';
import type { Disturbing } from '../../scenario/disturbances.ts';
import type { Effect, Making } from '../effect.ts';

/** Lets fewer marks take, or gives them worse grades: the mark of a part fails by the part's own luck. */
export function marks(spec: Disturbing<'marks'>, { line, course, draw }: Making): Effect {
  const { impaired } = line.marks.get(spec.station)!;
  const chance = spec.takesHold === undefined ? null : draw('takes-hold', spec.takesHold);
  const level = () => course.level(line.calendar.now);
  let now: Impairment;
  return {
    curedAt: spec.station,
    begin: () => {
      now = { level, chance: chance === null ? null : chance(), grades: spec.grades ?? null };
      impaired.add(now);
    },
    end: () => impaired.delete(now),
  };
}
