/** What becomes of an interrupted cycle; of several interruptions the severest counts. */
export const RESUMES = 0;
export const RESTARTS = 1;
export const SCRAPS = 2;
export const FATES = { resumes: RESUMES, restarts: RESTARTS, scraps: SCRAPS } as const;
