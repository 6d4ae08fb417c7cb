import { ChangeError } from '../scenario/changed.ts';
import type { Path } from '../scenario/problem.ts';
import { NotOfItsKind } from './theories/theory.ts';

/** Takes what is wrong, and where. */
export type Say = (path: Path, message: string) => void;

/** Says why something cannot be, where it is a change that cannot be or a line that a formula does not hold for. */
export function saying(path: Path, say: Say, attempt: () => void): void {
  try {
    attempt();
  } catch (error) {
    if (!(error instanceof ChangeError || error instanceof NotOfItsKind)) throw error;
    say(path, error.message);
  }
}
