import type { SettledFile } from '../experiment/settled.ts';
import { wrap } from '../report/columns.ts';
import { warmUpSentence } from '../report/warm-up-page.ts';
import { columns } from './look.ts';

/** Where counting begins, in lines of its own, of a warm-up that a pilot found; otherwise nothing. */
export const settledNote = ({ pilot }: Pick<SettledFile, 'pilot'>): string =>
  pilot?.by === 'pilot' ? `${wrap(warmUpSentence(pilot), columns()).join('\n')}\n` : '';
