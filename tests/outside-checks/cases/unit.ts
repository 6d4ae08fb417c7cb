/** A unit of time that a published example is stated in. */
export interface Unit {
  readonly name: string;
  readonly seconds: number;
}

export const SECOND: Unit = { name: 's', seconds: 1 };
export const MINUTE: Unit = { name: 'min', seconds: 60 };
export const HOUR: Unit = { name: 'h', seconds: 3600 };
