import type { ScrapCause } from '../../line/scrap-causes.ts';
import type { Attempt } from '../../line/trace/part-events.ts';
import type { Piece } from '../../line/trace/piece.ts';
import { listed } from '../words.ts';

/** Why a part was scrapped, behind a colon. */
export const CAUSES: Readonly<Record<ScrapCause, string>> = {
  incomplete: 'formed too cold, incomplete',
  webbed: 'formed too hot, webbed',
  thin: 'its wall is too thin',
  'off-limits': 'off limits',
  'lot-rejected': 'its lot was not accepted',
  unread: 'its mark was not read',
  'no-mates': 'no mates were there',
  tight: 'too tight',
  loose: 'too loose',
  flawed: 'a flaw keeps it from fitting',
  spoilt: 'spoilt as it was pressed together',
  'out-of-reach': 'rework cannot bring it in',
  'broken-off': 'its cycle was broken off',
};

/** What came of an attempt, behind a colon. */
export const ATTEMPTS: Readonly<Record<Attempt, string>> = {
  fits: 'fits',
  tight: CAUSES.tight,
  loose: CAUSES.loose,
  flawed: CAUSES.flawed,
  pressed: 'too tight, and pressed together',
  spoilt: CAUSES.spoilt,
};

/** What a station has done to a part when its cycle is over. */
export const DONE: Readonly<Record<string, string>> = {
  form: 'formed',
  trim: 'trimmed',
  mark: 'marked',
  gauge: 'let through without being gauged',
  assemble: 'not tried',
  rework: 'reworked',
  work: 'done',
  arrive: 'done',
};

/** `frame 812 of delivery 3`. */
export const pieceText = ({ stock, lot, piece }: Piece): string =>
  `${stock} ${piece} ${lot === 0 ? 'of those there at the start' : `of delivery ${lot}`}`;

export const piecesText = (pieces: readonly Piece[]): string => listed(pieces.map(pieceText));

/** A length as it is told, mm. */
export const lengthText = (mm: number): string => `${Number(mm.toFixed(4))} mm`.replace('-', '\u2212');
