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
  awaiting_technician: {
    letter: 't',
    colour: '#8c4a6b',
    ink: '#ffffff',
    meaning: 'waiting for a technician',
  },
  awaiting_handling: {
    letter: 'l',
    colour: '#e3e9f0',
    ink: '#1d2326',
    meaning: 'waiting to be loaded or unloaded',
  },
  set_up: { letter: 'u', colour: '#7d9c4e', ink: '#1d2326', meaning: 'being set up, or warming up' },
  off_shift: { letter: 'o', colour: '#6b7075', ink: '#ffffff', meaning: 'out of its working hours' },
  held: { letter: 'h', colour: '#a9bfb6', ink: '#1d2326', meaning: 'stopped by a policy' },
};
