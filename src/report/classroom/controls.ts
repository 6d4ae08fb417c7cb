import type { Exercise, Knob, Prediction } from '../../exercise/exercise.ts';
import { scenarioAt, startOf, valueText } from '../../exercise/setting.ts';
import { watchedOf } from '../../exercise/trial.ts';
import { shownLimits } from '../../exercise/watched.ts';
import { escapeHtml } from '../escape.ts';

/** The control of a knob, by its place. */
export const controlId = (knob: number): string => `knob-${knob + 1}`;
/** The control of a prediction, or of one of its choices. */
export const predictionId = (prediction: number, choice?: number): string =>
  `prediction-${prediction + 1}${choice === undefined ? '' : `-${choice + 1}`}`;

function knobControl(knob: Knob, i: number): string {
  const id = controlId(i);
  const name = escapeHtml(knob.name);
  if (knob.kind !== 'number') {
    const options = knob.choices.map(({ name }) => {
      const chosen = name === knob.starts ? ' selected' : '';
      return `<option value="${escapeHtml(name)}"${chosen}>${escapeHtml(name)}</option>`;
    });
    return `<p class="control"><label for="${id}">${name}</label> <select id="${id}">${options.join('')}</select></p>`;
  }
  const { least, most, step, starts, unit } = knob;
  const limits = `${least} to ${escapeHtml(valueText(knob, most))}, in steps of ${step}`;
  return (
    `<p class="control"><label for="${id}">${name}${unit && `, ${escapeHtml(unit)}`}</label> ` +
    `<input id="${id}" type="number" inputmode="decimal" required min="${least}" max="${most}" step="${step}" value="${starts}" ` +
    `aria-describedby="${id}-limits"> <span class="note" id="${id}-limits">${limits}</span></p>`
  );
}

/** A control for each knob. */
export const knobControls = ({ knobs }: Exercise): string => knobs.map(knobControl).join('\n');

function predictionControl(prediction: Prediction, i: number, exercise: Exercise): string {
  const asks = escapeHtml(prediction.asks);
  if (prediction.kind === 'number') {
    const [watched] = watchedOf(scenarioAt(exercise, startOf(exercise)), [prediction.of]);
    const id = predictionId(i);
    const { least, most } = shownLimits(watched!);
    const unit = escapeHtml(watched!.shown.unit);
    const limits = most === null ? `${least} or more` : `${least} to ${most}`;
    return (
      `<p class="control"><label for="${id}">${asks}</label> ` +
      `<input id="${id}" type="number" inputmode="decimal" step="any" required min="${least}"${most === null ? '' : ` max="${most}"`} ` +
      `aria-describedby="${id}-limits"> <span>${unit}</span> <span class="note" id="${id}-limits">${limits}</span></p>`
    );
  }
  const choices = prediction.choices.map((choice, k) => {
    const id = predictionId(i, k);
    return (
      `<label class="choice" for="${id}"><input id="${id}" type="radio" name="${predictionId(i)}" required> ` +
      `${escapeHtml(choice)}</label>`
    );
  });
  return `<fieldset class="choices"><legend>${asks}</legend>${choices.join('\n')}</fieldset>`;
}

/** A control for each prediction. */
export const predictionControls = (exercise: Exercise): string =>
  exercise.predictions.map((one, i) => predictionControl(one, i, exercise)).join('\n');
