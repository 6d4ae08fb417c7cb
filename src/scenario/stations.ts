import type { z } from 'zod';
import { kinds } from './fields.ts';
import { arrive } from './stations/arrive.ts';
import { assemble } from './stations/assemble.ts';
import { form } from './stations/form.ts';
import { gauge } from './stations/gauge.ts';
import { mark } from './stations/mark.ts';
import { rework } from './stations/rework.ts';
import { trim } from './stations/trim.ts';
import { work } from './stations/work.ts';

const words = ['work', 'form', 'trim', 'mark', 'gauge', 'assemble', 'rework', 'arrive'] as const;

/** One station. */
export const station = kinds('does', words, [work, form, trim, mark, gauge, assemble, rework, arrive]);

export type StationSpec = z.output<typeof station> & { readonly name: string };
export type SpecOf<Kind extends StationSpec['does']> = Extract<StationSpec, { does: Kind }>;

/** Whether parts start at this station. */
export function isSource(station: StationSpec): boolean {
  if (station.does === 'form' || station.does === 'arrive') return true;
  return station.does === 'work' && station.takes !== undefined;
}
