import { escapeHtml } from '../escape.ts';
import { sums } from './deltas.ts';
import type { Playback, PlaybackCrew, Span } from './playback.ts';

/** The width that the strips are drawn to, before they are stretched. */
const WIDTH = 1000;
const LANES = 12;

/** Spans of one name in one strip: a disturbance in full height, a response as a band in the middle. */
function strip(name: string, spans: readonly Span[], { end, warmUp }: Playback): string {
  const [{ what }] = spans as [Span];
  const x = (at: number) => Math.round((10 * WIDTH * at) / end) / 10;
  const [top, height] = what === 'disturbance' ? [0, 14] : [4, 6];
  const path = spans.map((span) => {
    const from = x(span.begin);
    return `M${from} ${top}h${Math.max(1, Math.round(10 * (x(span.end ?? end) - from)) / 10)}v${height}H${from}z`;
  });
  const fill = what === 'disturbance' ? '#571f33' : '#2c5684';
  const warm = warmUp > 0 ? `<path d="M0 13h${x(warmUp)}v1H0z" fill="#6f777b"/>` : '';
  return `<div class="lane"><p>${what}: ${escapeHtml(name)}</p>
<svg viewBox="0 0 ${WIDTH} 14" preserveAspectRatio="none" aria-hidden="true">${warm}<path d="${path.join('')}" fill="${fill}"/></svg></div>`;
}

/** How much of a crew was on its way or at work, in each column of a strip, from 0 to 1. */
export function busyShares(
  { number, sent, way, took }: PlaybackCrew,
  end: number,
  columns: number,
): number[] {
  const busy = new Array<number>(columns).fill(0);
  const width = end / columns;
  for (const [i, from] of Array.from(sums(sent)).entries()) {
    const until = took[i] === null ? end : Math.min(end, from + way[i]! + took[i]!);
    for (let k = Math.floor(from / width); k < columns && k * width < until; k++)
      busy[k]! += Math.min(until, (k + 1) * width) - Math.max(from, k * width);
  }
  return busy.map((time) => Math.min(1, time / width / number));
}

/** A crew as a strip, as high as the share of it that is busy; the rule of the warm-up runs along the top, free of that. */
function crewStrip(crew: PlaybackCrew, { end, warmUp }: Playback): string {
  const warm = warmUp > 0 ? `<path d="M0 0h${Math.round((WIDTH * warmUp) / end)}v1H0z" fill="#6f777b"/>` : '';
  let path = 'M0 14';
  for (const share of busyShares(crew, end, WIDTH)) path += `V${Math.round(140 * (1 - share)) / 10}h1`;
  return `<div class="lane"><p>crew: ${escapeHtml(crew.name)}</p>
<svg viewBox="0 0 ${WIDTH} 14" preserveAspectRatio="none" aria-hidden="true">${warm}<path d="${path}V14z" fill="#6f777b"/></svg></div>`;
}

/** One strip for each disturbance, each response and each crew, over the length of the run; a table tells the same. */
export function timeline(playback: Playback): string {
  const lanes = new Map<string, Span[]>();
  for (const span of playback.spans) {
    const key = `${span.what} ${span.name}`;
    lanes.set(key, [...(lanes.get(key) ?? []), span]);
  }
  const strips = [...lanes.values()].slice(0, LANES).map((own) => strip(own[0]!.name, own, playback));
  const more =
    lanes.size > LANES ? `<p class="note">and ${lanes.size - LANES} more, in the table below</p>` : '';
  const crews = playback.crews.map((crew) => crewStrip(crew, playback));
  return [...strips, ...(more === '' ? [] : [more]), ...crews].join('\n');
}
