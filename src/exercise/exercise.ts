import type { Change } from '../scenario/changed.ts';
import type { Raw } from '../scenario/raw.ts';

/** A number that may be turned within limits. */
export interface NumberKnob {
  readonly kind: 'number';
  readonly name: string;
  /** Where in the scenario it stands. */
  readonly at: readonly string[];
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly starts: number;
  /** Written behind the number; empty for plain numbers. */
  readonly unit: string;
}

/** One of several ways the line may be. */
interface ChoiceKnob {
  readonly kind: 'choice';
  readonly name: string;
  readonly choices: readonly { readonly name: string; readonly changes: readonly Change[] }[];
  readonly starts: string;
}

/** One of several policies. */
interface PolicyKnob {
  readonly kind: 'policy';
  readonly name: string;
  readonly choices: readonly { readonly name: string }[];
  readonly starts: string;
}

export type Knob = NumberKnob | ChoiceKnob | PolicyKnob;

/** Where each knob stands, by its name. */
export type Setting = Readonly<Record<string, number | string>>;

/** What is to be written down before anything is run. */
export type Prediction =
  | {
      readonly kind: 'number';
      readonly asks: string;
      /** What is watched and predicted. */
      readonly of: string;
      readonly setting: Setting;
    }
  | {
      readonly kind: 'choice';
      readonly asks: string;
      readonly choices: readonly string[];
      readonly right: string;
    };

/** A checked exercise: plain data, which a page can hold as JSON. */
export interface Exercise {
  readonly title: string;
  readonly teaches: string;
  readonly source: string;
  readonly question: string;
  readonly predictions: readonly Prediction[];
  /** The scenario as data before any knob is turned. */
  readonly raw: Raw;
  /** The policy that is followed where no knob says which. */
  readonly policy: string;
  readonly knobs: readonly Knob[];
  /** By their names; the first is drawn. */
  readonly watch: readonly string[];
  readonly seeds: number;
  /** The name of the theory that has values; null where none is known. */
  readonly theory: string | null;
  readonly discussion: string;
}
