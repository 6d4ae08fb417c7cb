import type { State } from '../line/state.ts';

/** How a state is shown: a letter, so that colour is never needed; a colour, and an ink legible on it. */
interface StateLook {
  readonly letter: string;
  readonly colour: string;
  readonly ink: string;
  readonly meaning: string;
}

/** Colours of clearly different lightness, so that they stay apart in grey print and for every kind of colour sight. */
export const STATE_LOOKS: Readonly<Record<State, StateLook>> = {
  working: { letter: 'w', colour: '#2c5684', ink: '#ffffff', meaning: 'doing its operation' },
  starved: {
    letter: 's',
    colour: '#eed88f',
    ink: '#1d2326',
    meaning: 'idle for want of parts, mates or sheet',
  },
  blocked: { letter: 'b', colour: '#cf8741', ink: '#1d2326', meaning: 'its finished part has nowhere to go' },
  down: {
    letter: 'd',
    colour: '#571f33',
    ink: '#ffffff',
    meaning: 'stopped by a breakdown or for work on it',
  },
  held: { letter: 'h', colour: '#a9bfb6', ink: '#1d2326', meaning: 'stopped by a policy' },
};
