import { z } from 'zod';
import { boxDrawRatio, cupDrawRatio, HEMISPHERE_DRAW_RATIO } from '../../standards/draw-ratio.ts';
import { entry, positiveLength, ratio } from '../fields.ts';
import { outside } from './window.ts';

const RATIO = 'expected a number, 1 or more: the area of the part over the area of sheet it is drawn from';
const SHAPES = ['draw-ratio', 'box', 'cup', 'hemisphere'];

/** How thin the sheet is drawn. */
export const wall = entry({
  'draw-ratio': z.number({ error: RATIO }).min(1, { error: RATIO }).optional().describe(RATIO.slice(9)),
  box: entry({ length: positiveLength, width: positiveLength, depth: positiveLength })
    .optional()
    .describe('an open box, instead of its draw ratio'),
  cup: entry({ diameter: positiveLength, height: positiveLength })
    .optional()
    .describe('a straight cup with a flat bottom, instead of its draw ratio'),
  hemisphere: z
    .literal(true, { error: 'expected true, or leave it out' })
    .optional()
    .describe('half a sphere'),
  least: positiveLength.describe('a part whose mean wall is thinner than this is thin'),
  thinning: ratio('share', '0.5 %/°C')
    .refine(({ value }) => value >= 0, { error: 'thinning cannot be negative' })
    .optional()
    .describe('share of the wall lost for each unit that the setting of the window lies above its target'),
  outside,
}).transform(({ drawRatio, box, cup, hemisphere, ...rest }, context) => {
  const ratios = [
    drawRatio,
    box && boxDrawRatio(box.length, box.width, box.depth),
    cup && cupDrawRatio(cup.diameter, cup.height),
    hemisphere && HEMISPHERE_DRAW_RATIO,
  ].filter((it) => it !== undefined);
  if (ratios.length === 1) return { ...rest, drawRatio: ratios[0]! };
  context.addIssue({ code: 'custom', message: `expected exactly one of ${SHAPES.join(', ')}` });
  return z.NEVER;
});
