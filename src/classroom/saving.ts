import type { Attempt } from '../exercise/attempt.ts';
import type { Exercise, Setting } from '../exercise/exercise.ts';
import { policyAt, rawAt } from '../exercise/setting.ts';
import { answersCsv, answersJson, type MadeFrom } from '../report/classroom/answers.ts';
import { savedName } from '../report/classroom/file-name.ts';
import { typed } from '../report/origin.ts';
import { byId, offer } from './elements.ts';

/** What the maker of the page has put into it. */
export interface Given {
  readonly exercise: Exercise;
  readonly madeFrom: MadeFrom;
  /** Of the exercise, for the names of what is saved. */
  readonly name: string;
}

const asText = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

/** The files that a pupil takes away. */
export class Saving {
  private readonly given: Given;

  constructor(given: Given) {
    this.given = given;
  }

  answers(attempt: Attempt): void {
    const answers = answersJson(this.given.exercise, attempt, this.given.madeFrom);
    offer(this.fileOf('answers', attempt, 'json'), asText(answers), 'application/json');
  }

  table(attempt: Attempt): void {
    offer(this.fileOf('answers', attempt, 'csv'), answersCsv(this.given.exercise, attempt), 'text/csv');
  }

  /** The line at a setting, which the command line runs to the same numbers, and how. */
  line(attempt: Attempt, setting: Setting): void {
    const { exercise } = this.given;
    const raw = rawAt(exercise, setting) as { readonly run: object };
    const line = { ...raw, run: { ...raw.run, seeds: exercise.seeds } };
    const file = this.fileOf('line', attempt, 'yaml');
    offer(file, asText(line), 'application/yaml');
    byId('line-command').textContent = typed(['run', file, '--policy', policyAt(exercise, setting)]);
    byId('line-saved').hidden = false;
  }

  private fileOf(what: string, { name }: Attempt, suffix: string): string {
    return savedName(what, { exercise: this.given.name, pupil: name, suffix });
  }
}
