import type { ScrapCause } from '../scrap-causes.ts';
import type { Piece } from './piece.ts';

interface At {
  /** s since the start of the run. */
  readonly at: number;
  readonly part: number;
  readonly station: string;
}

/** What became of an attempt to put a part and its mates together. */
export type Attempt = 'fits' | 'tight' | 'loose' | 'flawed' | 'pressed' | 'spoilt';

/** One thing that happened to one part at one station. */
export type PartEvent =
  /** It was started from a piece of stock, or came in by itself. */
  | (At & { readonly kind: 'started'; readonly from: Piece | null; readonly cavity: number | null })
  /** It came to wait in front of the station. */
  | (At & { readonly kind: 'waits' })
  /** It went past the station, to be done there later or never. */
  | (At & { readonly kind: 'passes' })
  /** It is kept before it leaves, until the station can do what it passed. */
  | (At & { readonly kind: 'kept' })
  /** It was put on one of these carriers, or taken off it. */
  | (At & { readonly kind: 'on-carrier' | 'off-carrier'; readonly carriers: string })
  /** It was taken onto a machine. */
  | (At & { readonly kind: 'begins'; readonly machine: string })
  /** The machine is done with it; it may still stand there. */
  | (At & { readonly kind: 'ends'; readonly machine: string })
  /** Its mark was looked for; `sent` to be marked anew. */
  | (At & { readonly kind: 'read'; readonly how: 'read' | 'by-hand' | 'not-read'; readonly sent: boolean })
  /** It was gauged; `known` when it is known which part the readings, mm, are of. */
  | (At & {
      readonly kind: 'gauged';
      readonly readings: readonly {
        readonly feature: string;
        readonly reading: number;
        readonly off: boolean;
      }[];
      readonly known: boolean;
      readonly off: boolean;
    })
  /** It was tried whether it fits these mates. */
  | (At & { readonly kind: 'tried'; readonly mates: readonly Piece[]; readonly result: Attempt })
  /** It was put aside without one of its mates. */
  | (At & { readonly kind: 'aside'; readonly mates: readonly Piece[] })
  /** It left; `station` is where it was last. */
  | (At & { readonly kind: 'good' })
  | (At & { readonly kind: 'scrapped'; readonly why: ScrapCause })
  | (At & { readonly kind: 'turned-away' });
