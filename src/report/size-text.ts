import type { Law } from '../kernel/distributions/index.ts';

/** A size by its law: `+0.2 mm`, what it is between, or about what. */
function sizeText(law: Law, text: (value: number) => string): string {
  switch (law.distribution) {
    case 'constant':
      return text(law.value);
    case 'uniform':
    case 'triangular':
      return `${text(law.low)} to ${text(law.high)}`;
    case 'empirical':
      return `one of ${[...new Set(law.values)].map(text).join(', ')}`;
    case 'normal':
      return `about ${text(law.mean)}`;
    default:
      throw new Error(`${law.distribution} is a law of times, not of sizes`);
  }
}

const rounded = (value: number): string => `${Number(Math.abs(value).toPrecision(3))}`;

/** A change with its sign and unit. */
export const changeText = (law: Law, unit: string): string =>
  sizeText(law, (value) => `${value < 0 ? '\u2212' : '+'}${rounded(value)} ${unit}`);

export const shareText = (value: number): string => `${rounded(value * 100)} %`;

/** A share of something by its law. */
export const sharesText = (law: Law): string => sizeText(law, shareText);
