/** What has one value until it has another: from `at[i]`, s, on it is `value[i]`. The first stands at the start of the run. */
export interface OverTime<Value> {
  readonly at: readonly number[];
  readonly value: readonly Value[];
}

/** Writes it down. Of several values at one instant the last counts, and one that changes nothing is left out. */
export class Steps<Value> implements OverTime<Value> {
  readonly at: number[] = [0];
  readonly value: Value[];

  constructor(first: Value) {
    this.value = [first];
  }

  get now(): Value {
    return this.value.at(-1)!;
  }

  set(now: number, value: Value): void {
    if (this.at.at(-1) === now) {
      this.at.pop();
      this.value.pop();
    }
    if (this.at.length > 0 && this.value.at(-1) === value) return;
    this.at.push(now);
    this.value.push(value);
  }
}
