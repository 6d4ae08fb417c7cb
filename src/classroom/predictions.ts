import type { Exercise } from '../exercise/exercise.ts';
import { predictionId } from '../report/classroom/controls.ts';
import { byId } from './elements.ts';

const controlOf = (i: number, choice?: number): HTMLInputElement =>
  byId<HTMLInputElement>(predictionId(i, choice));

/** The controls in which predictions are written down. */
export class Predictions {
  private readonly asked: Exercise['predictions'];

  constructor({ predictions }: Exercise) {
    this.asked = predictions;
  }

  fill(written: readonly string[]): void {
    for (const [i, prediction] of this.asked.entries()) {
      const own = written[i] ?? '';
      if (prediction.kind === 'number') controlOf(i).value = own;
      else for (const [k, choice] of prediction.choices.entries()) controlOf(i, k).checked = choice === own;
    }
  }

  /** As they are written; null while one is not. */
  written(): string[] | null {
    const written = this.asked.map((prediction, i) => {
      if (prediction.kind === 'number') return controlOf(i).value.trim();
      return prediction.choices.find((_, k) => controlOf(i, k).checked) ?? '';
    });
    return written.includes('') ? null : written;
  }

  focus(): void {
    controlOf(0, this.asked[0]!.kind === 'number' ? undefined : 0).focus();
  }
}
