/** What a report was made from is not there as it was, so that it cannot be made again. */
export class ChangedInputError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'ChangedInputError';
  }
}
