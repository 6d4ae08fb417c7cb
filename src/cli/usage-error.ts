/** The command line asks for something that cannot be. */
export class UsageError extends Error {}
