/** A sizing asks for what the scenario does not have. */
export class SizingError extends Error {
  constructor(sizing: string, why: string) {
    super(`sizing "${sizing}": ${why}`);
    this.name = 'SizingError';
  }
}
