import type { DemandSpec } from '../scenario/demand.ts';
import { durationText } from './duration.ts';
import { lawText } from './law-text.ts';
import { counted } from './words.ts';

/** Orders and finished goods in words. */
export function demandTexts(demand: DemandSpec | null): string[] {
  if (!demand) return [];
  const { every, pieces, dueAfter, finishedGoods } = demand;
  const wants = counted(pieces, 'good assembly', 'good assemblies');
  return [
    `orders ${lawText(every)} apart, each for ${wants}, due ${durationText(dueAfter)} later`,
    `finished goods: ${finishedGoods.atStart} at the start, room for ${finishedGoods.most}; when they are full, the line is blocked`,
  ];
}
