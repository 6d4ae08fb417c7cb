import { byId } from '../classroom/elements.ts';
import { type Kind, type Moment, momentsOf } from '../report/watch/interest.ts';
import { unpacked } from '../report/watch/packed.ts';
import { Run, type Whereabouts } from '../report/watch/run.ts';
import { Row } from './row.ts';
import {
  clock,
  countsText,
  crewsTable,
  doingHtml,
  frontText,
  goodsText,
  onText,
  stationsTable,
  stocksTable,
  stockText,
  storyTable,
  whereText,
} from './told.ts';

/** Of the viewer's time: what a frame may move the line on by at most, so that a pause of the browser is none of the run. */
const LONGEST_STEP = 100;
/** Of the viewer's time, ms: how often what the slider says is brought up to date while it plays. */
const SAID_EVERY = 1000;
/** Events at one moment that are told by name. */
const TOLD = 4;

/** Writes only what has changed, which costs a browser less than to write. */
class Texts {
  private readonly shown = new Map<string, string>();

  text(id: string, text: string): void {
    if (this.isNew(id, text)) byId(id).textContent = text;
  }

  /** A button that had the focus gives it to that of the same part, and one whose part has gone to the table around it. */
  html(id: string, html: string): void {
    if (!this.isNew(id, html)) return;
    const its = byId(id);
    const focused = document.activeElement as HTMLElement | null;
    const had = focused !== null && its.contains(focused);
    its.innerHTML = html;
    if (!had) return;
    const same = its.querySelector<HTMLElement>(`[data-part="${focused.dataset.part}"]`);
    (same ?? its.querySelector<HTMLElement>('[tabindex]'))?.focus({ preventScroll: true });
  }

  private isNew(id: string, text: string): boolean {
    if (this.shown.get(id) === text) return false;
    this.shown.set(id, text);
    return true;
  }
}

class WatchPage {
  private readonly run: Run;
  private readonly moments: readonly Moment[];
  private readonly rows: readonly Row[];
  private readonly texts = new Texts();
  private readonly slider = byId<HTMLInputElement>('time');
  private now = 0;
  private followed = 0;
  /** When the last frame was drawn, while it plays; null while it stands. */
  private last: number | null = null;
  /** The frame that is asked for, while it plays. */
  private next = 0;
  /** When the slider last said where it is. */
  private said = 0;

  constructor(run: Run) {
    this.run = run;
    this.moments = momentsOf(run);
    this.rows = run.playback.stations.map((_, i) => new Row(run, i, byId<HTMLCanvasElement>(`row-${i}`)));
    this.listen();
    this.askForStillness();
    this.goTo(Number(this.slider.value) * 1000);
  }

  private listen(): void {
    byId('play').addEventListener('click', () => (this.last === null ? this.play() : this.pause()));
    byId('next').addEventListener('click', () => this.step(1));
    byId('before').addEventListener('click', () => this.step(-1));
    this.slider.addEventListener('input', () => {
      this.say('');
      this.goTo(Number(this.slider.value) * 1000);
    });
    byId('follow').addEventListener('submit', (event) => {
      event.preventDefault();
      this.follow(Number(byId<HTMLInputElement>('part').value));
    });
    byId('leave').addEventListener('click', () => this.follow(0));
    byId('follow-it').addEventListener('click', () => this.follow(Number(byId('follow-it').dataset.part)));
    for (const id of ['now-stations', 'history', 'truths'])
      byId(id).addEventListener('click', ({ target }) => {
        const { part, at } = (target as HTMLElement).dataset;
        if (part !== undefined) this.follow(Number(part));
        if (at === undefined) return;
        this.say('');
        this.goTo(Number(at));
      });
    for (const [i, row] of this.rows.entries())
      byId(`row-${i}`).addEventListener('click', ({ offsetX }) => {
        const part = row.partAt(offsetX);
        if (part !== null) this.follow(part);
      });
    addEventListener('resize', () => {
      for (const row of this.rows) row.fit();
      this.draw();
    });
  }

  /** Nothing moves by itself for those who ask their system for that. */
  private askForStillness(): void {
    const wish = matchMedia('(prefers-reduced-motion: reduce)');
    const obey = () => {
      if (wish.matches) this.pause();
      byId('still').hidden = !wish.matches;
      byId<HTMLButtonElement>('play').disabled = wish.matches;
      byId<HTMLSelectElement>('speed').disabled = wish.matches;
    };
    wish.addEventListener('change', obey);
    obey();
  }

  private play(): void {
    if (this.now >= this.run.playback.end) this.now = 0;
    this.last = performance.now();
    byId('play').textContent = 'Pause';
    this.say('');
    this.ask();
  }

  private ask(): void {
    this.next = requestAnimationFrame((at) => this.frame(at));
  }

  /** Asks for no more frames, lest those of before go on beside those of the next play. */
  private halt(): void {
    this.last = null;
    cancelAnimationFrame(this.next);
    byId('play').textContent = 'Play';
  }

  private pause(): void {
    if (this.last === null) return;
    this.halt();
    this.settle();
    this.say(`Stopped at ${clock(this.now)}: ${countsText(this.run, this.now)}.`);
  }

  private frame(at: number): void {
    if (this.last === null) return;
    const speed = Number(byId<HTMLSelectElement>('speed').value);
    const passed = Math.max(0, Math.min(LONGEST_STEP, at - this.last));
    this.last = at;
    this.now = Math.min(this.run.playback.end, this.now + passed * speed);
    this.draw();
    if (at - this.said >= SAID_EVERY) this.sayTime(at);
    if (this.now >= this.run.playback.end) this.pause();
    else this.ask();
  }

  /** To a moment, to stand there. */
  private goTo(now: number): void {
    this.halt();
    this.now = now;
    this.draw();
    this.settle();
  }

  /** To the next moment of the chosen kinds, or the one before. */
  private step(way: 1 | -1): void {
    const chosen = new Set(
      [...document.querySelectorAll<HTMLInputElement>('input[name=kind]:checked')].map(
        ({ value }) => value as Kind,
      ),
    );
    const wanted = this.moments.filter(({ kind }) => chosen.has(kind));
    const found =
      way > 0 ? wanted.find(({ at }) => at > this.now) : wanted.findLast(({ at }) => at < this.now);
    if (found === undefined) {
      this.pause();
      this.say(`No such event ${way > 0 ? 'after' : 'before'} ${clock(this.now)}.`);
      return;
    }
    this.goTo(found.at);
    const same = wanted.filter(({ at }) => at === found.at);
    const more = same.length > TOLD ? `; and ${same.length - TOLD} more` : '';
    const told = same.slice(0, TOLD).map(({ text }) => text);
    this.say(`${clock(found.at)}: ${told.join('; ')}${more}.`, found.part);
  }

  /** @param part that may be followed from here */
  private say(text: string, part?: number): void {
    byId('status').textContent = text;
    byId('offer').hidden = part === undefined;
    if (part === undefined) return;
    const button = byId('follow-it');
    button.dataset.part = String(part);
    button.textContent = `Follow part ${part}`;
  }

  private follow(part: number): void {
    this.followed = part;
    byId('leave').hidden = part === 0;
    byId('truth').hidden = part === 0;
    if (part === 0) {
      for (const id of ['history', 'truths', 'where']) this.texts.text(id, '');
      byId('part').focus();
    } else {
      byId<HTMLInputElement>('part').value = String(part);
      const { seen, truth } = this.run.storyOf(part);
      this.texts.html('history', storyTable('table-history', `What happened to part ${part}`, seen));
      this.texts.html('truths', storyTable('table-truth', `Part ${part} in truth`, truth));
      const start = this.run.startOf(part);
      if (this.run.whereIs(part, this.now) === null) this.goTo(start);
      byId('where').focus({ preventScroll: true });
    }
    this.draw();
    this.settle();
  }

  private draw(): void {
    const { run, now, texts } = this;
    const there = run.partsAt(now);
    texts.text('clock', clock(now));
    texts.text('counts', countsText(run, now));
    this.slider.value = String(Math.floor(now / 1000));
    byId('hand').style.left = `calc(8px + (100% - 16px) * ${now / run.playback.end})`;
    for (const [i, row] of this.rows.entries()) this.drawStation(i, row, there);
    for (const [i, { level }] of run.playback.stocks.entries())
      if (level !== null) texts.text(`stock-${i}`, stockText(run, i, now));
    if (run.goods !== null) texts.text('goods', goodsText(run, now));
    if (this.followed === 0) return;
    texts.text('where', whereText(run, this.followed, now, there));
    this.showPlace();
  }

  private drawStation(station: number, row: Row, there: readonly Whereabouts[]): void {
    const { run, now, texts } = this;
    const here = there.filter((where) => where.station === station);
    texts.text(`front-${station}`, frontText(run, station, now));
    texts.html(`doing-${station}`, doingHtml(run, station, now));
    texts.text(`on-${station}`, onText(here));
    row.draw(now, here, this.followed);
  }

  /** Marks how far the history of the part that is followed has come. */
  private showPlace(): void {
    const rows = [...byId('history').querySelectorAll('tr[data-from]')] as HTMLElement[];
    const current = rows.findLast(({ dataset }) => Number(dataset.from) <= this.now);
    for (const row of rows)
      if (row !== current) row.removeAttribute('aria-current');
      else if (!row.hasAttribute('aria-current')) row.setAttribute('aria-current', 'step');
  }

  private sayTime(at: number): void {
    this.said = at;
    this.slider.setAttribute('aria-valuetext', clock(this.now));
  }

  /** What is brought up to date only where the playback stands. */
  private settle(): void {
    const { run, now } = this;
    this.sayTime(performance.now());
    this.texts.html('now-stations', stationsTable(run, now, run.partsAt(now)));
    this.texts.html('now-stocks', stocksTable(run, now));
    this.texts.html('now-crews', crewsTable(run, now));
  }
}

export function openPage(): void {
  new WatchPage(new Run(unpacked(byId('run').textContent ?? '')));
}
