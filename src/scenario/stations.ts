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

/** Parts that a station takes at once. */
export function loadOf(station: StationSpec): number {
  switch (station.does) {
    case 'form':
      return station.perSheet;
    case 'work':
      return isSource(station) ? 1 : station.batch;
    case 'gauge':
      return station.inspection.by === 'plan' ? station.inspection.lot : 1;
    default:
      return 1;
  }
}

/** Whether parts wait in front of this station until so many are there. */
export const gathers = (station: StationSpec): boolean => station.does !== 'form' && loadOf(station) > 1;

/** Whether parts start at this station. */
export function isSource(station: StationSpec): boolean {
  if (station.does === 'form' || station.does === 'arrive') return true;
  return station.does === 'work' && station.takes !== undefined;
}

/** The stocks that a station takes from. */
export function takenBy(station: StationSpec): readonly string[] {
  if (!('takes' in station) || station.takes === undefined) return [];
  return typeof station.takes === 'string' ? [station.takes] : station.takes;
}
