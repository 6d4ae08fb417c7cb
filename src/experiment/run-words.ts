import type { Task } from './worker.ts';

/** What messages call a run, without its seed. */
export const runOf = ({ policy, variant }: Task): string =>
  `${variant === undefined ? 'the run' : 'the undisturbed run'} of policy "${policy}"`;
