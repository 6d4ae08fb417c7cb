import type { Comparison } from '../experiment/comparison.ts';
import { escapeHtml } from './escape.ts';
import { occurring, STATE_LOOKS } from './state-words.ts';
import { VERDICT_TERMS } from './verdict-terms.ts';

const define = (pairs: readonly (readonly [string, string])[]): string =>
  `<dl>${pairs.map(([term, text]) => `<dt>${escapeHtml(term)}</dt><dd>${escapeHtml(text)}</dd>`).join('\n')}</dl>`;

/** As a sentence of its own. */
const sentence = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}.`;

function words({ policies, baseline, bound }: Comparison): [string, string][] {
  const terms = VERDICT_TERMS.map(([term, text]): [string, string] => [term, sentence(text)]);
  if (policies.length === 1) return terms.slice(0, 1);
  return [
    ...terms,
    [
      'baseline',
      `${baseline}, the first policy of the scenario, which the verdicts compare the others with.`,
    ],
    ...(bound === null
      ? []
      : [
          [
            'bound',
            `${bound} is no policy, since no line can know what it knows. It stands for reference: nothing is claimed of it, and it ` +
              'is not among the comparisons. The interval of its difference holds by itself.',
          ] as [string, string],
        ]),
  ];
}

/** How to read the page: every word of the verdict, every measure and every state that it shows. */
export function reading(
  comparison: Comparison,
  besides: readonly (readonly [string, string])[] = [],
): string {
  const measures = comparison.measures.map(({ measure }): [string, string] => [
    measure.name,
    `${measure.meaning}. ${measure.better === 'higher' ? 'Higher' : 'Lower'} is better.`,
  ]);
  const states = occurring(Object.values(comparison.stateShares)).map((state): [string, string] => [
    STATE_LOOKS[state].word,
    STATE_LOOKS[state].meaning,
  ]);
  return `<h3>Words</h3>
${define([...words(comparison), ...besides])}
<h3>Measures</h3>
${define(measures)}
<h3>States of a station</h3>
${define(states)}`;
}
