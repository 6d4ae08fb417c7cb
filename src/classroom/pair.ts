import type { Tried } from '../exercise/attempt.ts';
import type { Watched } from '../exercise/watched.ts';
import { differenceTable, differenceText } from '../report/classroom/trial-tables.ts';
import { escapeHtml } from '../report/escape.ts';
import { byId, write } from './elements.ts';

const IDS = ['one', 'other'] as const;

const selects = (): HTMLSelectElement[] => IDS.map((id) => byId<HTMLSelectElement>(id));

/** Places of the settings at which the line ran. */
const soundOf = (tried: readonly Tried[]): number[] =>
  tried.flatMap(({ failure }, i) => (failure === null ? [i] : []));

/** Two of the settings that were tried, compared run by run. */
export class Pair {
  private readonly watched: readonly Watched[];
  private tried: readonly Tried[] = [];

  constructor(watched: readonly Watched[]) {
    this.watched = watched;
    for (const select of selects()) select.addEventListener('change', () => this.showDifference());
  }

  /** Offers the settings there are; what was chosen stays. */
  show(tried: readonly Tried[]): void {
    this.tried = tried;
    const sound = soundOf(tried);
    byId('pair').hidden = sound.length < 2;
    for (const select of selects()) {
      const before = select.value;
      write(select, sound.map((i) => `<option value="${i}">setting ${i + 1}</option>`).join(''));
      if (sound.map(String).includes(before)) select.value = before;
    }
    this.showDifference();
  }

  /** Chooses the newest against the one before. */
  chooseNewest(): void {
    const newest = soundOf(this.tried).slice(-2).reverse();
    if (newest.length < 2) return;
    for (const [i, select] of selects().entries()) select.value = String(newest[i]);
    this.showDifference();
  }

  private showDifference(): void {
    const [one, other] = selects().map(({ value }) => Number(value || Number.NaN));
    const [a, b] = [this.tried[one!], this.tried[other!]];
    const pair = a && b && one !== other && { one: a, other: b, names: [one! + 1, other! + 1] as const };
    write(
      byId('difference-said'),
      escapeHtml(pair ? differenceText(this.watched, pair) : 'Choose two settings.'),
    );
    write(byId('difference'), pair ? differenceTable(this.watched, pair) : '');
  }
}
