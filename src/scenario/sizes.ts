import { z } from 'zod';
import { LARGEST_NOMINAL, limitDeviations, nearestGrade, TOLERANCE_CLASSES } from '../standards/iso-286.ts';
import { spread } from './fields.ts';

/** Between which sizes a feature is within its tolerance, mm. */
interface Limits {
  readonly lower: number;
  readonly upper: number;
}

/** What a feature should be and how far it spreads by itself, mm. */
interface Size {
  readonly limits: Limits | null;
  /** What it should have: what readings are compared with, and what rework and retuning bring it to. */
  readonly aim: number;
  readonly ownSd: number;
}

const CLASS = 'expected a tolerance class of ISO 286, such as H7 for a hole or g6 for a shaft';

const toleranceClass = z
  .string({ error: CLASS })
  .meta({ pattern: '^(JS|js|[D-Hd-hkmnp])([5-9]|1[0-3])$' })
  .superRefine((given, context) => {
    if (TOLERANCE_CLASSES.includes(given)) return;
    const near = nearestGrade(given);
    const remedy =
      near === undefined
        ? 'which has the holes D to H and JS and the shafts d to h, js, k, m, n and p, of grades 5 to 13'
        : `which has grades 5 to 13; the nearest is "${near}"`;
    context.addIssue({ code: 'custom', message: `"${given}" is no class of the table, ${remedy}` });
  });

const capability = z
  .number({ error: 'expected a number above zero, such as 1.33' })
  .positive({ error: 'expected a number above zero, such as 1.33' });

/** The keys by which a feature of a part or of a mate says its size. */
export const sized = {
  class: toleranceClass
    .optional()
    .describe(
      'tolerance class of ISO 286, upper case for a hole, lower case for a shaft: sets the limits; the middle of them is aimed at',
    ),
  capability: capability
    .optional()
    .describe('Cp by which "own-sd" follows from the limits: their distance / (6 x capability)'),
  'own-sd': spread.optional().describe('standard deviation of what each piece adds; 0 when left out'),
};

interface Given {
  readonly nominal: number;
  readonly tolerance?: number | undefined;
  readonly class?: string | undefined;
  readonly capability?: number | undefined;
  readonly ownSd?: number | undefined;
}

function limitsOf({ nominal, tolerance, class: of }: Given): Limits | null {
  if (of === undefined)
    return tolerance === undefined ? null : { lower: nominal - tolerance, upper: nominal + tolerance };
  const { lower, upper } = limitDeviations(nominal, of);
  return { lower: nominal + lower, upper: nominal + upper };
}

/** What is wrong with the keys that say a size, and at which of them; undefined when nothing is. */
function faultOf(given: Given): { at: string; message: string } | undefined {
  if (given.class !== undefined && given.tolerance !== undefined)
    return { at: 'class', message: 'give either "tolerance" or "class"; both set the limits' };
  if (given.class !== undefined && !(given.nominal > 0 && given.nominal <= LARGEST_NOMINAL))
    return { at: 'class', message: `classes are for nominal sizes above 0 and up to ${LARGEST_NOMINAL} mm` };
  if (given.capability === undefined) return undefined;
  if (given.ownSd !== undefined)
    return { at: 'capability', message: 'give either "own-sd" or "capability"; both set the spread' };
  if (given.class === undefined && given.tolerance === undefined)
    return { at: 'capability', message: 'a capability needs limits: give a "class" or "tolerance", too' };
  return undefined;
}

/**
 * Limits, aim and spread of a feature from what is given of them. By its capability Cp a feature has the standard
 * deviation (upper - lower) / (6 Cp): the definition of Cp, D. C. Montgomery, Introduction to Statistical Quality Control.
 */
export function sizeOf(given: Given, context: z.RefinementCtx): Size {
  const fault = faultOf(given);
  if (fault) {
    context.addIssue({ code: 'custom', message: fault.message, path: [fault.at] });
    return z.NEVER;
  }
  const limits = limitsOf(given);
  // A class need not lie about the nominal size; a plain tolerance does.
  const aim =
    limits !== null && given.class !== undefined ? (limits.lower + limits.upper) / 2 : given.nominal;
  const ownSd =
    given.capability === undefined || limits === null
      ? (given.ownSd ?? 0)
      : (limits.upper - limits.lower) / (6 * given.capability);
  return { limits, aim, ownSd };
}
