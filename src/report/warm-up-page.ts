import type { Pilot } from '../experiment/pilot.ts';
import { durationText } from './duration.ts';
import { escapeHtml } from './escape.ts';
import { fixed } from './format.ts';
import { heading, scrolling, section } from './html.ts';
import { timeUnit } from './twin-charts.ts';
import { warmUpChart } from './warm-up-chart.ts';
import { counted } from './words.ts';

/** How long the line ran before anything was counted, and why. */
export function warmUpSentence({ by, warmUp, policy, runs }: Pilot): string {
  const pilot = `${counted(runs, 'undisturbed run')} of "${policy}"`;
  switch (by) {
    case 'pilot':
      return `Counting begins at ${durationText(warmUp)}, where MSER-5 finds a pilot of ${pilot} settled.`;
    case 'none':
      return 'There is no warm-up: all counts from the start, which belongs to what is asked of a run that begins and ends.';
    case 'given':
      return `Counting begins at ${durationText(warmUp)}, as the scenario says.`;
  }
}

/** What the pilot says of a choice that it did not make. */
function besides({ by, warmUp, settled }: Pilot): string {
  if (by === 'pilot') return '';
  const given =
    settled === null
      ? 'MSER-5 finds no place to begin in the first half: it goes on settling, or has a rhythm, such as shifts.'
      : `MSER-5 would begin at ${durationText(settled)}${
          by === 'given' && settled > warmUp ? ', which is later: some of the start may be counted' : ''
        }.`;
  return ` ${given}`;
}

function table({ rates, smoothed, batch, length }: Pilot): string {
  const { unit, size } = timeUnit(length);
  const rows = rates.map((rate, i) => {
    const smooth = smoothed[i] === undefined ? '' : fixed(smoothed[i], 1);
    return `<tr><th scope="row">${fixed(((i + 1) * batch) / size, 2)}</th><td>${fixed(rate, 1)}</td><td>${smooth}</td></tr>`;
  });
  const head = [`batch ends, ${unit}`, 'good /h', 'moving average'].map((text) => heading(text)).join('');
  const caption = 'Output of the pilot <span>(good assemblies per hour, mean over its runs)</span>';
  return `<details>\n<summary>The same as a table</summary>\n${scrolling('table-warm-up', caption, head, rows)}\n</details>`;
}

/** What the signs of its chart mean. */
export function warmUpKey({ batch, runs, settled }: Pilot): string {
  return (
    `Dots: good per hour in batches of ${durationText(batch)}, mean over ${counted(runs, 'run')} of a pilot without disturbances, under seeds of its own. ` +
    "Line: their moving average over five batches (Welch's rule). Shaded: not counted." +
    (settled === null
      ? ''
      : ' Dashed: where MSER-5 would begin, so that the mean of what is left has the least standard error.')
  );
}

/** The choice of the warm-up, shown on how the output of the line settles. */
export function warmUpSection(pilot: Pilot): string {
  const key = warmUpKey(pilot);
  const figure = `<figure><figcaption>Output while the line settles <span>(good /h)</span></figcaption>${warmUpChart(pilot)}</figure>`;
  return section(
    'warm-up',
    'Warm-up',
    `<p>${escapeHtml(`${warmUpSentence(pilot)}${besides(pilot)}`)}</p>
<p class="note">${escapeHtml(key)}</p>
<div class="panels">
${figure}
</div>
${table(pilot)}`,
  );
}
