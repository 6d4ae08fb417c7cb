import type { DisturbanceSpec } from '../scenario/disturbances.ts';
import { durationText } from './duration.ts';
import { lawText } from './law-text.ts';

const UNITS = { temperature: '°C', pressure: 'kPa', time: 's', length: 'mm', share: '', rate: '/s' } as const;

function what(it: DisturbanceSpec): string {
  switch (it.disturbs) {
    case 'setting': {
      const by = `${it.by.value > 0 ? '+' : '\u2212'}${Math.abs(it.by.value)} ${UNITS[it.by.dimension]}`;
      return `setting "${it.setting}" off by ${by}${it.ramp ? `, building up over ${durationText(it.ramp)}` : ''}`;
    }
    case 'supplier':
      return `no deliveries of "${it.stock}"`;
    case 'marks':
      return `only ${Number((it.takesHold * 100).toPrecision(3))} % of marks take at "${it.station}"`;
    case 'station':
      return `"${it.station}" stands still`;
  }
}

/** A disturbance in words: what it does, from when, for how long. */
export function disturbanceText(it: DisturbanceSpec): string {
  const again = it.againAfter ? `, again ${lawText(it.againAfter)} after its end` : '';
  return `${it.name}: ${what(it)}, from ${lawText(it.at)} after the start for ${lawText(it.for)}${again}`;
}
