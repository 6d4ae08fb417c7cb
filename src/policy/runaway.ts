/** So often a response may come into force at one instant; beyond that it is taken to trigger itself. */
export const MOST_AT_ONE_INSTANT = 1000;

/** A response comes into force again and again without the clock moving. */
export class RunawayResponseError extends Error {
  readonly response: string;
  /** s */
  readonly time: number;

  constructor(response: string, time: number) {
    super(
      `${response} triggers itself for ever: at ${time} s of simulated time it came into force ` +
        `more than ${MOST_AT_ONE_INSTANT} times without the clock moving; what it does ends what it is in force for. ` +
        'Give it "notice", "lasts" or "cool-down", or let it go by something else',
    );
    this.name = 'RunawayResponseError';
    this.response = response;
    this.time = time;
  }
}
