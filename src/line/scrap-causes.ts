/** Why parts are scrapped, in the order in which a part meets it. */
export const SCRAP_CAUSES = [
  /** Formed too cold, too hot, or with too thin a wall. */
  'incomplete',
  'webbed',
  'thin',
  'off-limits',
  'lot-rejected',
  'unread',
  'no-mates',
  'tight',
  'loose',
  /** A flaw from forming, found when it was to be assembled. */
  'flawed',
  /** Pressed together and spoiled by it. */
  'spoilt',
  /** A rework station could not bring it in. */
  'out-of-reach',
  /** Its cycle was broken off. */
  'broken-off',
] as const;

/** Why a part was scrapped. */
export type ScrapCause = (typeof SCRAP_CAUSES)[number];
