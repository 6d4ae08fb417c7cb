import { STATES, type State } from '../line/state.ts';
import { escapeHtml } from '../report/escape.ts';
import { heading, scrolling } from '../report/html.ts';
import { STATE_LOOKS } from '../report/state-words.ts';
import { clockText } from '../report/trace/clock-text.ts';
import type { StoryLine } from '../report/trace/part-lines.ts';
import { machineName, type Run, type Whereabouts } from '../report/watch/run.ts';
import { counted } from '../report/words.ts';

export const clock = (ms: number): string => clockText(ms / 1000);

/** `3 of 20 wait`; empty where nothing can wait. */
export function frontText(run: Run, station: number, now: number): string {
  const level = run.frontAt(station, now);
  const { buffer } = run.playback.stations[station]!;
  if (level === null || buffer === null) return '';
  return buffer.places === null ? `${level} waiting` : `${level} of ${buffer.places} places`;
}

const sign = (state: State, count: number): string => {
  const { letter, word, colour, ink } = STATE_LOOKS[state];
  const many = count > 1 ? ` \u00d7 ${count}` : '';
  return `<b style="background:${colour};color:${ink}">${letter}</b>${word}${many}`;
};

/** What the machines of a station are doing, each state once. */
export function doingHtml(run: Run, station: number, now: number): string {
  const { machines } = run.playback.stations[station]!;
  const counts = new Map<State, number>();
  for (let machine = 0; machine < machines; machine++) {
    const state = run.stateAt(station, machine, now);
    counts.set(state, (counts.get(state) ?? 0) + 1);
  }
  return STATES.flatMap((state) => (counts.has(state) ? [sign(state, counts.get(state)!)] : [])).join(' ');
}

/** Which parts are on a station, and how many stand beside it. */
export function onText(here: readonly Whereabouts[]): string {
  const on = here.filter(({ manner }) => manner === 'cycle' || manner === 'stands').map(({ part }) => part);
  const aside = here.filter(({ manner }) => manner === 'aside').length;
  const kept = here.filter(({ manner }) => manner === 'kept').length;
  return [
    ...(on.length > 0 ? [`${on.length === 1 ? 'part' : 'parts'} ${ranges(on)}`] : []),
    ...(aside > 0 ? [`${aside} put aside`] : []),
    ...(kept > 0 ? [`${kept} kept to be done later`] : []),
  ].join('; ');
}

/** `5 to 8, 11`. */
function ranges(numbers: readonly number[]): string {
  const sorted = [...numbers].sort((one, other) => one - other);
  const runs: [number, number][] = [];
  for (const number of sorted) {
    const last = runs.at(-1);
    if (last && number === last[1] + 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs
    .flatMap(([from, to]) =>
      from === to ? [`${from}`] : to === from + 1 ? [`${from}`, `${to}`] : [`${from} to ${to}`],
    )
    .join(', ');
}

export function countsText(run: Run, now: number): string {
  const { started, good, scrapped, turnedAway } = run.countsAt(now);
  const inLine = started - good - scrapped - turnedAway;
  const away = turnedAway > 0 ? `, ${turnedAway} turned away` : '';
  return `${good} good, ${scrapped} scrapped${away}, ${inLine} in the line`;
}

export function stockText(run: Run, stock: number, now: number): string {
  const { orders } = run.playback.stocks[stock]!;
  const out = orders.filter(({ placed, came }) => placed <= now && (came === null || came > now));
  const pieces = out.reduce((sum, order) => sum + order.pieces, 0);
  const ordered = out.length > 0 ? `, ${pieces} on order` : '';
  const level = run.onHandAt(stock, now)!;
  return `${level === 0 ? 'none' : level}${ordered}`;
}

const ofPart = (part: number): string =>
  `<button type="button" class="plain" data-part="${part}">${part}</button>`;

/** Every machine as a row. */
export function stationsTable(run: Run, now: number, there: readonly Whereabouts[]): string {
  const rows = run.playback.stations.flatMap((station, i) =>
    station.names.map((_, machine) => {
      const on = there.filter(
        (where) =>
          where.station === i &&
          where.machine === machine &&
          (where.manner === 'cycle' || where.manner === 'stands'),
      );
      const front = machine === 0 ? frontText(run, i, now) || 'no places' : '';
      return `<tr><th scope="row">${escapeHtml(machineName(station, machine))}</th><td class="word state">${sign(
        run.stateAt(i, machine, now),
        1,
      )}</td><td class="word">${front}</td><td class="word names">${on.map(({ part }) => ofPart(part)).join(' ') || 'none'}</td></tr>`;
    }),
  );
  const head = ['is', 'in front', 'parts on it'].map((text) => heading(text, 'word')).join('');
  const caption = `Stations at ${clock(now)} <span class="how">(a number of a part is a button that follows it)</span>`;
  return scrolling('table-now', caption, heading('station') + head, rows);
}

export const goodsText = (run: Run, now: number): string => String(run.goodsAt(now) || 'none');

/** Who of each crew is on the way or at work, and where. */
export function crewsTable(run: Run, now: number): string {
  const rows = run.crews.map(({ name, number }, i) => {
    const jobs = run.busyAt(i, now).map(({ member, machine, job, came }) => {
      const who = number > 1 ? `${member} ` : '';
      return `${who}${1000 * came > now ? 'on the way to' : 'at'} ${machine}, for ${job}`;
    });
    return `<tr><th scope="row">${escapeHtml(name)}</th><td class="word told">${escapeHtml(jobs.join('; ') || 'idle')}</td></tr>`;
  });
  if (rows.length === 0) return '';
  const head = heading('crew') + heading('who is where', 'word');
  return scrolling('table-crews-now', `Crews at ${clock(now)}`, head, rows);
}

export function stocksTable(run: Run, now: number): string {
  const rows = run.playback.stocks.flatMap(({ name, level }, i) =>
    level === null
      ? []
      : [`<tr><th scope="row">${escapeHtml(name)}</th><td class="word">${stockText(run, i, now)}</td></tr>`],
  );
  if (run.goods !== null)
    rows.push(`<tr><th scope="row">finished goods</th><td class="word">${goodsText(run, now)}</td></tr>`);
  if (rows.length === 0) return '';
  return scrolling(
    'table-stocks-now',
    `Stock at ${clock(now)}`,
    heading('stock') + heading('on hand', 'word'),
    rows,
  );
}

/** What happened to a part, a row each; its moments are buttons that go there. */
export function storyTable(id: string, caption: string, lines: readonly StoryLine[]): string {
  const rows = lines.map(({ at, station, text }) => {
    const ms = Math.round(1000 * at);
    const when = `<button type="button" class="plain" data-at="${ms}">${clockText(at)}</button>`;
    return `<tr data-from="${ms}"><th scope="row">${when}</th><td class="word">${escapeHtml(station)}</td><td class="word told">${escapeHtml(text)}</td></tr>`;
  });
  return scrolling(id, caption, heading('when') + heading('where', 'word') + heading('what', 'word'), rows);
}

/** Where a part is, as a sentence. */
export function whereText(run: Run, part: number, now: number, there: readonly Whereabouts[]): string {
  const where = there.find((one) => one.part === part);
  const at = `At ${clock(now)} part ${part}`;
  if (where === undefined)
    return `${at} ${run.startOf(part) > now ? 'has not been started yet' : 'is not in the line any more'}.`;
  const station = run.playback.stations[where.station]!;
  const { name } = station;
  switch (where.manner) {
    case 'waits': {
      const ahead = there.filter(
        (one) => one.station === where.station && one.manner === 'waits' && isAhead(one, where),
      );
      return `${at} waits in front of ${name}, ${ahead.length === 0 ? 'next in turn' : `${counted(ahead.length, 'part')} before it`}.`;
    }
    case 'cycle':
      return `${at} is in work at ${machineName(station, where.machine)}.`;
    case 'stands':
      return `${at} stands finished at ${machineName(station, where.machine)}.`;
    case 'aside':
      return `${at} is put aside at ${name}.`;
    default:
      return `${at} is kept, to be done at ${name} later.`;
  }
}

const isAhead = (one: Whereabouts, other: Whereabouts): boolean =>
  one.since < other.since || (one.since === other.since && one.part < other.part);
