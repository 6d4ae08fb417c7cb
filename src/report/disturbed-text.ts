import type { DisturbanceSpec, Disturbing } from '../scenario/disturbances.ts';
import { unitsOf } from '../scenario/units.ts';
import { GRADES } from '../standards/mark-grade.ts';
import { changeText, sharesText, shareText } from './size-text.ts';

function marksText({ station, takesHold, grades }: Disturbing<'marks'>): string {
  const some = (grades ?? []).flatMap((of, i) => (of > 0 ? [`${shareText(of)} ${GRADES[i]}`] : []));
  const by = grades === undefined ? '' : ` graded ${some.join(', ')}`;
  if (takesHold === undefined) return `marks at "${station}" are${by}`;
  return `only ${sharesText(takesHold)} of marks take at "${station}"${by && `,${by}`}`;
}

function featureText({ feature, by, spread }: Disturbing<'feature'>): string {
  const off = by === undefined ? [] : [`off by ${changeText(by, 'mm')}`];
  const wide = spread === undefined ? [] : [`with ${sharesText(spread)} of its own spread`];
  return `"${feature}" is made ${[...off, ...wide].join(' and ')}`;
}

function gaugeText({ station, feature, bias, spread }: Disturbing<'gauge'>): string {
  const off = bias === undefined ? [] : [`off by ${changeText(bias, 'mm')}`];
  const wide = spread === undefined ? [] : [`with ${sharesText(spread)} of its repeatability`];
  return `"${station}" reads ${feature === undefined ? 'all' : `"${feature}"`} ${[...off, ...wide].join(' and ')}`;
}

function lotText({ stock, supplier, feature, by, unsound }: Disturbing<'lot'>): string {
  const from = supplier === undefined ? '' : ` from "${supplier}"`;
  const off = by === undefined ? [] : [`"${feature}" off by ${changeText(by, 'mm')}`];
  const bad = unsound === undefined ? [] : [`${sharesText(unsound)} more of them unsound`];
  return `lots of "${stock}"${from} come with ${[...off, ...bad].join(' and ')}`;
}

function healthText({ station, breakdown, asOften, repairsTake }: Disturbing<'health'>): string {
  const way = breakdown === undefined ? '' : ` (${breakdown})`;
  const often = asOften === undefined ? [] : [`breaks down${way} ${sharesText(asOften)} as often`];
  const subject = often.length === 0 ? `its repairs${way} take` : 'its repairs take';
  const long = repairsTake === undefined ? [] : [`${subject} ${sharesText(repairsTake)} of their time`];
  return `"${station}": ${[...often, ...long].join(', ')}`;
}

/** What a disturbance does, in a clause. */
export function disturbedText(it: DisturbanceSpec): string {
  switch (it.disturbs) {
    case 'setting':
      return `setting "${it.setting}" off by ${changeText(it.by.law, unitsOf(it.by.dimension)[0]!)}`;
    case 'supplier':
      return `no deliveries of "${it.stock}"${it.supplier === undefined ? '' : ` by "${it.supplier}"`}`;
    case 'marks':
      return marksText(it);
    case 'station':
      return `"${it.station}" stands still`;
    case 'feature':
      return featureText(it);
    case 'gauge':
      return gaugeText(it);
    case 'reader':
      return `an attempt at "${it.station}" reads ${sharesText(it.to)} of the marks that it reads otherwise`;
    case 'lot':
      return lotText(it);
    case 'speed':
      return `"${it.station}" works at ${sharesText(it.to)} of its speed`;
    case 'health':
      return healthText(it);
    case 'crew':
      return `${it.away} of "${it.crew}" away`;
    case 'conveyor':
      return `the conveyor to "${it.station}" moves at ${sharesText(it.to)} of its speed`;
    case 'demand':
      return `${sharesText(it.to)} of the usual orders come`;
  }
}
