import { count, entry, length, spread } from './fields.ts';

/** How the edge that a trimming tool cuts moves and scatters as the tool wears; both grow in proportion to its cuts. */
export const wear = entry({
  per: count(1).describe('cuts of the tool after which the edge has moved and scattered as given here'),
  shift: length.default(0).describe('how far the edge has moved after so many cuts, with its sign'),
  spread: spread.default(0).describe('standard deviation of what each part has more after so many cuts'),
});
