import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { recoveredOf } from '../../src/experiment/recovered.ts';
import { idealLine } from '../../src/line/ideal.ts';
import { checkJson } from '../../src/report/check-json.ts';
import { checkText } from '../../src/report/check-text.ts';
import { comparisonJson } from '../../src/report/json.ts';
import { comparisonPage } from '../../src/report/page.ts';
import { recoveredNotes, recoveredRows } from '../../src/report/recovered-cells.ts';
import { comparisonText, singleText } from '../../src/report/terminal.ts';
import { verdictSentences } from '../../src/report/verdict.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed } from '../scenario/sample.ts';
import { outcome } from './fake.ts';
import { samplePage } from './sample.ts';

const NAMES = ['carry on', 'fix <it>', 'foresight'];
const flat = (text: string) => text.replace(/\s+/g, ' ');
const LOOK = { title: 'T', colour: false, width: 80 };

/** Ten seeds; "fix" makes 3 of the 6 that the bound makes beyond "carry on", about. */
function made(bound = 46) {
  const outcomes = NAMES.flatMap((name, p) =>
    Array.from({ length: 10 }, (_, i) =>
      outcome(name, i + 1, {
        throughput_per_h: [40, 43, bound][p]! + (i % 3) + (p === 0 ? 0 : ((i + p) % 2) / 10),
        scrap_rate: 0.1 - 0.01 * p,
      }),
    ),
  );
  const comparison = compare(NAMES, outcomes, 'foresight');
  return { outcomes, comparison, recovered: recoveredOf(NAMES, outcomes, 'foresight') };
}

describe('a bound', () => {
  it('is called one in tables, and has the word in the place of a verdict', () => {
    const { comparison, recovered } = made();
    const text = comparisonText(comparison, LOOK, undefined, recovered);
    const rows = text.split('\n').filter((line) => line.startsWith('foresight'));
    const tables = rows.filter((line) => line.startsWith('foresight (bound) '));
    expect(tables.length).toBe(2);
    for (const row of tables) expect(row).toMatch(/ bound$/);
    expect(flat(text)).toContain('30 runs: 2 policies and the bound, each under the same 10 seeds.');
    expect(flat(text)).toContain("each is widened by Bonferroni's inequality for 2 comparisons");
    expect(flat(text)).toContain('and so do those of the differences of the bound.');
  });

  it('is nothing that the verdict speaks of', () => {
    const sentences = verdictSentences(made().comparison);
    expect(sentences.length).toBe(1);
    expect(sentences[0]).toMatch(/^fix <it> against carry on: better in throughput/);
    const { outcomes } = made();
    expect(verdictSentences(compare(['carry on', 'foresight'], outcomes, 'foresight'))).toEqual([
      'There is nothing to compare: carry on is the only policy.',
    ]);
  });

  it('is called one where it is run by itself', () => {
    const { outcomes } = made();
    const alone = outcomes.filter(({ policy }) => policy === 'foresight');
    expect(singleText(compare(['foresight'], alone, 'foresight'), LOOK)).toContain(
      'policy foresight (bound)',
    );
  });

  it('tells in the page what was recovered, in words that are no markup', () => {
    const { comparison, recovered } = made();
    const page = comparisonPage({ ...samplePage(), comparison, recovered });
    expect(page).toContain('<section id="recovered"');
    expect(page).toContain('<th scope="row">fix &lt;it&gt;</th><td>50');
    expect(page).toContain('foresight (bound)');
    expect(page).toContain('<dt>bound</dt>');
    expect(comparisonPage(samplePage())).not.toMatch(/id="recovered"|<dt>bound/);
  });

  it('is told in the data by itself, under its own name', () => {
    const { comparison, outcomes, recovered } = made();
    const given = {
      outcomes,
      version: '0',
      command: ['compare', 'a.yaml'],
      scenario: { file: 'a', title: 'A', sha256: 'b' },
    };
    const { bound, policies } = comparisonJson({ ...given, comparison, recovered });
    expect(policies).toEqual(NAMES);
    expect(bound!.policy).toBe('foresight');
    expect(bound!.recoverable_per_h).toMatchObject({ mean: recovered.recoverable.value, runs: 10 });
    const { share } = recovered.shares![0]!;
    expect(bound!.recovered).toEqual([
      {
        ...{ policy: 'fix <it>', mean: share.value, lower: share.lower, upper: share.upper, runs: 10 },
        ...{ level: 0.95, method: 'Fieller' },
      },
    ]);
    const alone = compare(['foresight'], outcomes.slice(20), 'foresight');
    expect(comparisonJson({ ...given, comparison: alone }).bound).toEqual({
      ...{ policy: 'foresight', recoverable_per_h: null, recovered: null },
    });
    expect(comparisonJson({ ...given, comparison: compare(NAMES.slice(0, 2), outcomes) })).not.toHaveProperty(
      'bound',
    );
  });
});

describe('what was recovered', () => {
  it('is shown in % with its interval', () => {
    const { recovered } = made();
    const [row] = recoveredRows(recovered);
    const { share } = recovered.shares![0]!;
    expect(Number(row!.share)).toBeCloseTo(100 * share.value, 0);
    expect(row!.interval).toMatch(/^4\d\.?\d* to 5\d\.?\d*$/);
    expect(recoveredNotes(recovered)[0]).toMatch(/^foresight makes \+6\.\d+ good \/h against carry on/);
  });

  it('is said not to be known where the bound makes no more', () => {
    const { comparison, recovered } = made(39.9);
    expect(recovered.shares).toBeNull();
    const text = flat(comparisonText(comparison, LOOK, undefined, recovered));
    expect(text).toContain('so these runs show no loss that could be recovered');
    expect(text).not.toContain('share recovered');
  });
});

describe('what a bound stands for', () => {
  const scenario = (bound: string) =>
    parseScenario(changed('  carry on: []\n', `  carry on: []\n  foresight: [${bound}]\n`), 'it');

  it('is told by check', () => {
    const it_ = scenario('{ do: foresee }, { do: keep, stock: sheet, on-hand: 200 }');
    const text = flat(checkText(it_, idealLine(it_), 80));
    expect(text).toContain(
      'foresight (bound): no policy, but what it would be to know true values and all that is to come, at no cost: nothing of ' +
        'cold, late and faded, each ended as it begins or ordered ahead of; halt goes on as for the others; attempts to ' +
        'assemble that would end in scrap take no time; sheet kept as it says',
    );
    const told = { scenario: it_, ideal: idealLine(it_), file: 'a', sha256: 'b' };
    expect(checkJson(told)).toHaveProperty('bound', 'foresight');
  });
});
