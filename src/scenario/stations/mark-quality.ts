import type { z } from 'zod';
import { anyShare, count, entry, share } from '../fields.ts';
import { symbol } from '../grades.ts';

/** More scans of one mark than anybody takes. */
const MOST_SCANS = 20;

const measured = entry({
  mean: share.describe('over all marks'),
  sd: anyShare.default(0).describe('standard deviation from mark to mark'),
  'scan-sd': anyShare.default(0).describe('standard deviation from scan to scan of one mark'),
});

/** What a verifier would measure of the marks that took; what is left out is taken to be good enough for an A. */
export const markQuality = entry({
  scans: count(1, MOST_SCANS).default(1).describe('scans whose grades are averaged'),
  contrast: measured.optional().describe('symbol contrast; the higher the better'),
  modulation: measured.optional().describe('the higher the better'),
  'axial-non-uniformity': measured.optional().describe('the lower the better'),
  'grid-non-uniformity': measured.optional().describe('the lower the better'),
  'unused-error-correction': entry({
    symbol,
    'wrong-codewords': share.describe('chance that a codeword of a scan is wrong'),
  })
    .optional()
    .describe('share of the error correction that a scan has left; the higher the better'),
}).refine(({ scans: _, ...parameters }) => Object.values(parameters).some((given) => given !== undefined), {
  error:
    'expected at least one of contrast, modulation, axial-non-uniformity, grid-non-uniformity and unused-error-correction',
});

export type MarkQualitySpec = z.output<typeof markQuality>;
