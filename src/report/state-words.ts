import { STATES, type State } from '../line/state.ts';

/** How a state is shown: a word; a letter, so that colour is never needed; a colour, and an ink legible on it. */
interface StateLook {
  readonly word: string;
  readonly letter: string;
  readonly colour: string;
  readonly ink: string;
  readonly meaning: string;
}

/** Colours of clearly different lightness, so that they stay apart in grey print and for every kind of colour sight. */
export const STATE_LOOKS: Readonly<Record<State, StateLook>> = {
  working: {
    word: 'working',
    letter: 'w',
    colour: '#2c5684',
    ink: '#ffffff',
    meaning: 'doing its operation, or being loaded or unloaded',
  },
  starved: {
    word: 'starved',
    letter: 's',
    colour: '#eed88f',
    ink: '#1d2326',
    meaning: 'idle for want of parts, mates, sheet or carriers',
  },
  blocked: {
    word: 'blocked',
    letter: 'b',
    colour: '#cf8741',
    ink: '#1d2326',
    meaning: 'its finished part has nowhere to go',
  },
  down: {
    word: 'down',
    letter: 'd',
    colour: '#571f33',
    ink: '#ffffff',
    meaning: 'broken down and under repair, in planned maintenance, or made to stand still by a disturbance',
  },
  awaiting_technician: {
    word: 'no technician',
    letter: 't',
    colour: '#925b61',
    ink: '#ffffff',
    meaning: 'waiting for one of the crew to repair it, set it up or maintain it',
  },
  awaiting_spare: {
    word: 'no spare',
    letter: 'p',
    colour: '#8a180c',
    ink: '#ffffff',
    meaning: 'broken down or due for a set-up, and the spare that this takes is out of stock',
  },
  awaiting_handling: {
    word: 'no handler',
    letter: 'l',
    colour: '#60b2d7',
    ink: '#1d2326',
    meaning: 'waiting for one of the crew to load or unload it',
  },
  set_up: {
    word: 'set-up',
    letter: 'u',
    colour: '#300d49',
    ink: '#ffffff',
    meaning: 'being set up, or warming up',
  },
  off_shift: {
    word: 'off shift',
    letter: 'o',
    colour: '#eef4ff',
    ink: '#1d2326',
    meaning: 'out of its working hours',
  },
  held: { word: 'held', letter: 'h', colour: '#a9bfb6', ink: '#1d2326', meaning: 'stopped by a policy' },
};

type Shares = Readonly<Record<string, Readonly<Record<State, number>>>>;

/** The states that some station was in, in their order. */
export function occurring(shares: readonly Shares[]): readonly State[] {
  const stations = shares.flatMap((byStation) => Object.values(byStation));
  return STATES.filter((state) => stations.some((own) => own[state] > 0));
}
