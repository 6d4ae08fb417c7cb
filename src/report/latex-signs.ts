import { printable } from './columns.ts';

/** Greek letters from alpha on, as the standard orders them; the o, and capitals like Latin ones, have no command. */
const SMALL =
  'alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi . pi rho varsigma sigma tau upsilon phi chi psi omega';
const CAPITAL = '. . Gamma Delta . . . Theta . . Lambda . . Xi . Pi . . Sigma . . Phi . Psi Omega';

const greek = (names: string, first: number): [string, string][] =>
  names
    .split(' ')
    .map((name, i): [string, string] => [String.fromCharCode(first + i), `$\\${name}$`])
    .filter(([, command]) => !command.includes('.'));

const SIGNS: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '^': '\\textasciicircum{}',
  '~': '\\textasciitilde{}',
  '<': '\\textless{}',
  '>': '\\textgreater{}',
  '|': '\\textbar{}',
  // Behind the end of a row these two would be taken for its options.
  '[': '{[}',
  '*': '{*}',
  // An active sign in some languages.
  '"': '{\\char34}',
  '\u2212': '$-$',
  '\u2013': '--',
  '\u2026': '\\ldots{}',
  '\u00a0': '~',
  // Signs that the standard faces have in formulas only.
  '\u2264': '$\\le$',
  '\u2265': '$\\ge$',
  '\u2260': '$\\ne$',
  '\u2248': '$\\approx$',
  '\u221e': '$\\infty$',
  '\u2192': '$\\to$',
  '\u2190': '$\\leftarrow$',
  ...Object.fromEntries([...greek(SMALL, 0x3b1), ...greek(CAPITAL, 0x391)]),
};

const ANY =
  /[\\^~<>|[*"\u2212\u2013\u2026\u00a0\u2264\u2265\u2260\u2248\u221e\u2190\u2192\u0391-\u03c9]|[{}$&#_%]|-(?=-)|[`'](?=[`'])|[?!](?=`)/gu;

/**
 * Text as it may stand anywhere in a paragraph or a cell, for what it is. What is no letter of a Latin alphabet, nor
 * among these signs, stays as it is: it takes an engine and a face that have it.
 */
export function escaped(text: string): string {
  return printable(text).replace(ANY, (sign) => {
    if ('{}$&#_%'.includes(sign)) return `\\${sign}`;
    if (SIGNS[sign] !== undefined) return SIGNS[sign];
    // A Greek letter without a command stays; of two signs that would join, the first is set apart.
    return sign > '\u0390' ? sign : `${sign}{}`;
  });
}
