import { STATES } from '../../line/state.ts';
import { PLAYBACK_FORMAT } from '../documents.ts';
import { escapeHtml } from '../escape.ts';
import { heading, scrolling, section } from '../html.ts';
import { type MadeFrom, madeFromJson, originsOf } from '../made-from.ts';
import { framed, originList } from '../page-frame.ts';
import { occurring, STATE_LOOKS } from '../state-words.ts';
import { clockText } from '../trace/clock-text.ts';
import { KINDS } from './interest.ts';
import { packed } from './packed.ts';
import type { Playback, PlaybackStation, Span } from './playback.ts';
import { timeline } from './timeline.ts';
import { WATCH_STYLE } from './watch-style.ts';

/** What a page that plays a run back is made of. */
export interface WatchSource {
  readonly playback: Playback;
  readonly from: MadeFrom;
  /** What works the page, as one text. */
  readonly program: string;
}

/** Seconds of the line that pass in one second of the viewer's. */
const SPEEDS = [1, 10, 60, 300, 900, 3600];
const USUAL = 60;
const ROWS = 200;

const speedText = (speed: number): string =>
  speed < 60
    ? `${speed} s a second`
    : speed < 3600
      ? `${speed / 60} min a second`
      : `${speed / 3600} h a second`;

const clock = (ms: number): string => clockText(ms / 1000);

function controls({ end }: Playback, strips: string): string {
  const speeds = SPEEDS.map(
    (speed) => `<option value="${speed}"${speed === USUAL ? ' selected' : ''}>${speedText(speed)}</option>`,
  );
  const kinds = Object.entries(KINDS).map(
    ([kind, text]) => `<label><input type="checkbox" name="kind" value="${kind}" checked> ${text}</label>`,
  );
  return `<noscript><p class="warning">This page plays a run back in your browser, and the browser lets no page run anything. Allow scripts to watch; the tables below hold without.</p></noscript>
<p><span id="clock" class="clock">${clock(0)}</span> <span id="counts" class="counts"></span></p>
<div class="course">
${strips}
<label class="note" for="time">Time since the start of the run</label>
<input type="range" id="time" min="0" max="${Math.floor(end / 1000)}" step="1" value="0">
<div class="hand" id="hand"></div>
</div>
<p class="ends"><span>${clock(0)}</span><span>${clock(end / 2)}</span><span>${clock(end)}</span></p>
<p class="buttons"><button type="button" class="main" id="play">Play</button>
<label for="speed">Speed</label> <select id="speed">${speeds.join('')}</select>
<button type="button" id="before">Event before</button> <button type="button" id="next">Next event</button></p>
<p id="still" class="note" hidden>Your system asks for little motion, so that nothing plays by itself here: step from event to event, or move the time.</p>
<fieldset id="kinds"><legend>Events to step to</legend>${kinds.join('\n')}</fieldset>
<p id="status" class="status" role="status"></p>
<p class="buttons" id="offer" hidden><button type="button" id="follow-it"></button></p>`;
}

function stationRow({ name, to, names }: PlaybackStation, i: number): string {
  const several = names.length > 1 ? `, ${names.length} machines` : '';
  return `<li><p><strong>${escapeHtml(name)}</strong><span class="front" id="front-${i}"></span>
<span class="doing" id="doing-${i}"></span><span class="on" id="on-${i}"></span><span class="note">then ${escapeHtml(to.join(' or '))}${several}</span></p>
<canvas id="row-${i}" aria-hidden="true"></canvas></li>`;
}

function drawing({ stations, stocks, demand }: Playback): string {
  const limited = stocks.flatMap(({ name, level }, i) => (level === null ? [] : [{ name, i }]));
  const store = [
    ...limited.map(({ name, i }) => `<li>${escapeHtml(name)}: <span id="stock-${i}"></span></li>`),
    ...(demand ? ['<li>finished goods: <span id="goods"></span></li>'] : []),
  ];
  return `<p class="note">Parts go through a station as eyes go through a line of text: from left to right, first through the places in front of it, then through its cycle, and on to the next line.</p>
<div><p class="sides"><span>waiting in front</span><span>in work</span></p>
<ol class="flow">
${stations.map(stationRow).join('\n')}
</ol></div>
${store.length > 0 ? `<p>Stock on hand</p>\n<ul class="store">${store.join('\n')}</ul>` : ''}`;
}

const following = ({ parts }: Playback) => `<form id="follow" class="buttons">
<label for="part">Number of the part, which its mark carries</label>
<input type="number" id="part" min="1" max="${parts.started.length}" step="1" required>
<button type="submit">Follow it</button> <button type="button" id="leave" hidden>Follow none</button></form>
<p class="note">Parts 1 to ${parts.started.length}, in the order in which they were started; or click a part in the drawing.</p>
<p id="where" tabindex="-1"></p>
<div id="history"></div>
<details id="truth" hidden><summary>What it truly is, which no policy sees</summary><div id="truths"></div></details>`;

const NOW = `<p class="note">Brought up to date whenever the playback stands.</p>
<div id="now-stations"></div>
<div id="now-stocks"></div>
<div id="now-crews"></div>`;

function spanRow({ what, name, begin, end }: Span): string {
  const cells = [clock(begin), end === null ? 'lasts' : clock(end)].map((text) => `<td>${text}</td>`);
  return `<tr><th scope="row">${escapeHtml(name)}</th><td class="word">${what}</td>${cells.join('')}</tr>`;
}

function spansSection({ spans }: Playback): string {
  if (spans.length === 0)
    return section('spans', 'Disturbances and responses', '<p>There were none in this run.</p>');
  const rows = spans.slice(0, ROWS).map(spanRow);
  const head = heading('what') + heading('kind', 'word') + heading('from') + heading('to');
  const more =
    spans.length > ROWS
      ? `<p class="note">${spans.length - ROWS} more are not listed; <code>mendline trace --json</code> tells of all.</p>`
      : '';
  const table = scrolling(
    'table-spans',
    'When what was there <span>(h:min:s since the start)</span>',
    head,
    rows,
  );
  return section('spans', 'Disturbances and responses', table + more);
}

const CREWS = `<p>The strip of a crew is as high as the share of it that is on its way to a machine or at work there.</p>
`;
const GOODS = `<p>Finished goods are counted, and the oldest of them are taken to go to an order first.</p>
`;

function reading({ stations, crews, demand, warmUp, policy, seed }: Playback): string {
  const shares = stations.map(({ states }) =>
    Object.fromEntries(
      STATES.map((state, i) => [state, states.some(({ value }) => value.includes(i)) ? 1 : 0]),
    ),
  );
  const states = occurring([Object.fromEntries(shares.map((own, i) => [i, own])) as never]);
  const legend = states.map((state) => {
    const { word, letter, colour, ink, meaning } = STATE_LOOKS[state];
    return `<li><b style="background:${colour};color:${ink}">${letter}</b>${word}: ${meaning}</li>`;
  });
  const warm =
    warmUp > 0
      ? ` Until ${clock(warmUp)}, as far as the thin rule in each strip goes, the run warms up, and measures do not count it.`
      : '';
  return `<div class="prose"><p>This is one run: policy "${escapeHtml(policy)}" under seed ${seed}. Another seed is another day; which policy is better is told by many
runs, and not by one.${warm}</p>
<p>Each square is a place for a part that waits, and is filled when a part stands there. Where there are many places, or no end of them,
a bar stands for them. Parts on a belt are drawn as waiting. In work, the rule is in the colour of the state, and the upright
stroke goes from left to right as the cycle does; a finished part that cannot leave stands at the right end. Nothing moves between stations: a
part that leaves one is at the next.</p>
${crews.length > 0 ? CREWS : ''}${demand ? GOODS : ''}<p>Disturbances and what a part truly is are shown to you and to no policy. Moments are told to the millisecond.</p></div>
<ul class="legend" aria-label="States">${legend.join('')}</ul>`;
}

/** One file that plays one run back. */
export function watchPage({ playback, from, program }: WatchSource): string {
  const { policy, seed } = playback;
  const { title } = from.scenario;
  return framed({
    name: `${title} - seed ${seed}`,
    title,
    kind: `playback of one run: ${escapeHtml(policy)}, seed ${seed}`,
    skip: { id: 'watching', text: 'Skip to the playback' },
    style: WATCH_STYLE,
    madeFrom: { ...madeFromJson(PLAYBACK_FORMAT, from), policy, seed },
    program: {
      text: program,
      data: `<script type="text/plain" id="run">${packed(playback)}</script>`,
    },
    sections: [
      section('watching', 'Watch', controls(playback, timeline(playback))),
      section('line', 'The line', drawing(playback)),
      section('one-part', 'One part', following(playback)),
      section('now', 'The line as a table', NOW),
      spansSection(playback),
      section('reading', 'How to read this', reading(playback)),
      section('origin', 'Provenance', originList({ ...originsOf(from, String(seed)), policy })),
    ].join('\n'),
  });
}
