import { FailedRunError } from '../experiment/failed-run.ts';
import { InterruptedError } from '../experiment/interrupted.ts';
import {
  ForeignJournalError,
  JournalInUseError,
  UnwritableJournalError,
} from '../experiment/journal/errors.ts';
import { UnsettledError } from '../experiment/pilot.ts';
import { PolicyModuleError } from '../experiment/policy-module.ts';
import { UnreadableFileError } from '../experiment/scenario-file.ts';
import { SizingError } from '../experiment/sizing/sizing-error.ts';
import { UnwritableError } from '../report/output-folder.ts';
import { ChangeError } from '../scenario/changed.ts';
import { ScenarioError } from '../scenario/problem.ts';
import { ChangedInputError } from './changed-input.ts';
import { EXIT } from './exit-codes.ts';
import { UsageError } from './usage-error.ts';

/** Says on stderr what went wrong and returns the exit code for it. A fault of the program keeps its trace. */
export function explainFailure(error: unknown): number {
  if (error instanceof ScenarioError) {
    console.error(error.describe());
    console.error(error.message);
    return EXIT.scenario;
  }
  const known: readonly [new (...args: never[]) => Error, number][] = [
    [UsageError, EXIT.usage],
    [ChangeError, EXIT.usage],
    [UnreadableFileError, EXIT.scenario],
    [SizingError, EXIT.scenario],
    [PolicyModuleError, EXIT.scenario],
    [FailedRunError, EXIT.failedRun],
    [UnsettledError, EXIT.failedRun],
    [UnwritableError, EXIT.unwritable],
    [UnwritableJournalError, EXIT.unwritable],
    [JournalInUseError, EXIT.unwritable],
    [ForeignJournalError, EXIT.usage],
    [ChangedInputError, EXIT.differs],
    [InterruptedError, EXIT.interrupted],
  ];
  const found = known.find(([kind]) => error instanceof kind);
  if (!found) {
    console.error('mendline met a fault of its own; please report it with this trace:');
    console.error(error);
    return EXIT.fault;
  }
  console.error(`mendline: ${(error as Error).message}`);
  return found[1];
}
