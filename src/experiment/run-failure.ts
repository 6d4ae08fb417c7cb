import { EndlessLoopError } from '../kernel/calendar.ts';
import { SelfCheckError } from '../line/self-check.ts';
import { StandstillError } from '../line/standstill.ts';
import { TraceTooLongError } from '../line/trace/log.ts';
import { PolicyModuleFault } from '../policy/module/calls.ts';
import { RunawayResponseError } from '../policy/runaway.ts';
import { ChangeError } from '../scenario/changed.ts';

const FAILURES = [
  StandstillError,
  EndlessLoopError,
  SelfCheckError,
  RunawayResponseError,
  PolicyModuleFault,
  ChangeError,
  TraceTooLongError,
];

/** Why a run failed, in words; null where the error is a fault of the program. */
export function failureOf(error: unknown): string | null {
  return FAILURES.some((kind) => error instanceof kind) ? (error as Error).message : null;
}
