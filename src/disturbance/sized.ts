import type { Law } from '../kernel/distributions/index.ts';
import { Upset, type Upsets } from '../line/upset.ts';
import type { Making } from './effect.ts';

/** A size that is drawn each time the disturbance begins, and where it counts meanwhile. */
export interface Sized {
  begin(): void;
  end(): void;
}

/** A change of the size that `law` draws, less what there is otherwise: 0 for a shift, 1 for a share of what is usual. */
export function sized(
  purpose: string,
  law: Law | undefined,
  usual: 0 | 1,
  among: readonly Pick<Upsets, 'add' | 'delete'>[],
  { course, draw }: Making,
): Sized {
  if (law === undefined) return { begin: () => {}, end: () => {} };
  const upset = new Upset(course);
  const next = draw(purpose, law);
  return {
    begin: () => {
      upset.size = next() - usual;
      for (const upsets of among) upsets.add(upset);
    },
    end: () => {
      for (const upsets of among) upsets.delete(upset);
    },
  };
}
