import type { Controls, Switch } from '../../line/controls.ts';
import type { ConditionSpec } from '../../scenario/conditions.ts';

/** What is told of a condition. */
export interface Told {
  /** Whether it holds: at once, or at the start behind the first loads where it is of states; and at each change from then on. */
  readonly holds: Switch;
  /** It has signalled, which is over at once. */
  readonly signals: () => void;
}

/** What a condition of a response sees. */
export interface View {
  readonly controls: Controls;
  /** Whether what is watched is not heeded now. */
  readonly deaf: () => boolean;
  /** Takes what lets a watch start anew, for when it is heeded again. */
  readonly onHeeded: (startAnew: () => void) => void;
  /** Tells whether another response of the policy is in force. */
  readonly onResponse: (name: string, tell: Switch) => void;
}

/** Follows a condition. */
export type Meet = (condition: ConditionSpec, view: View, told: Told) => void;
