import { meanOf } from '../kernel/distributions/index.ts';
import type { DemandSpec } from '../scenario/demand.ts';
import { durationText } from './duration.ts';
import { lawText } from './law-text.ts';
import { counted } from './words.ts';

/** What orders ask for in the long run, beside what the line could make (parts per second). */
function wantedText({ every, pieces }: DemandSpec, idealRate: number): string {
  const wanted = pieces / meanOf(every);
  const told = `${Number((wanted * 3600).toPrecision(3))} /h in the long run`;
  return wanted > idealRate ? `${told}, more than the ideal rate: orders will fall behind` : told;
}

/** Orders and finished goods in words. */
export function demandTexts(demand: DemandSpec | null, idealRate: number): string[] {
  if (!demand) return [];
  const { every, pieces, dueAfter, finishedGoods } = demand;
  const wants = counted(pieces, 'good assembly', 'good assemblies');
  return [
    `orders ${lawText(every)} apart, each for ${wants}, due ${durationText(dueAfter)} later; ${wantedText(demand, idealRate)}`,
    `finished goods: ${finishedGoods.atStart} at the start, room for ${finishedGoods.most}; when they are full, the line is blocked`,
  ];
}
