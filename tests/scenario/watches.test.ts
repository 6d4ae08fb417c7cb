import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused, refuses, SOUND } from './sample.ts';

const SIGHTS = '{ at: assembly, sees: misfits, count: 5, of-last: 25 }';
const watching = (watch: string) => changed(SIGHTS, `{ at: gauging, of: rim, ${watch} }`);
const watched = (watch: string) => {
  const response = parseScenario(watching(watch), 'cell.yaml').policies[1]!.responses[0]!;
  return response.do === 'stop-and-fix' ? response.watch : undefined;
};

const SHEWHART = watching('chart: shewhart, sigma: 0.07 mm, limit: 3, run-rules: [2-of-3, 8-in-a-row]');
const CUSUM = watching('chart: cusum, sigma: 0.07 mm, slack: 0.5, limit: 5, head-start: 50 %');
const EWMA = watching('chart: ewma, learns: 50, weight: 20 %, limit: 2.86, mean-of: 2');
const CAPABILITY = watching('capability: cpk, below: 1.33, of-last: 50, surely: 95 %');

describe('a watch', () => {
  it('is a chart of readings, with what is left out filled in', () => {
    expect(watched('chart: cusum, sigma: 70 um, slack: 0.5, limit: 5')).toEqual({
      ...{ at: 'gauging', of: 'rim', chart: 'cusum', sigma: 0.07, slack: 0.5, limit: 5 },
      ...{ headStart: 0, side: 'both', meanOf: 1 },
    });
    expect(watched('chart: shewhart, learns: 50, limit: 3, centre: 120.1 mm')).toEqual({
      ...{ at: 'gauging', of: 'rim', chart: 'shewhart', learns: 50, limit: 3, centre: 120.1 },
      ...{ runRules: [], meanOf: 1 },
    });
  });

  it('is a capability of the last readings', () => {
    expect(watched('capability: ppk, below: 1.33, of-last: 50, surely: 75 %')).toEqual({
      ...{ at: 'gauging', of: 'rim', capability: 'ppk', below: 1.33, ofLast: 50, surely: 0.75 },
    });
  });
});

describe('a watch that is none', () => {
  const marked = (watch: string) => changed(`watch: ${SIGHTS}`, watch);
  it('is told what a watch is', () => {
    const form = 'expected a mapping with "at" and "sees", or with "at", "of" and "chart" or "capability"';
    expectRefused(marked('watch: ¤soon'), form);
    expectRefused(
      marked('').replace('- do: stop-and-fix', '- ¤do: stop-and-fix'),
      `"watch" is missing: ${form}`,
    );
    expectRefused(
      marked('watch: ¤{ at: gauging, of: rim }'),
      'expected what of the readings it goes by: "chart" or "capability"',
    );
  });
});

describe('a watch by a Shewhart chart', () => {
  refuses(
    [
      ['of: rim, chart', 'of: ¤rin, chart', '"rin" is no feature; did you mean "rim"?'],
      ['of: rim, chart', 'of: ¤tab, chart', '"tab" is no feature that "gauging" measures'],
      ['at: gauging, of', 'at: ¤gaging, of', 'did you mean "gauging"?'],
      ['at: gauging, of', 'at: ¤assembly, of', 'expected one that does gauge'],
      ['chart: shewhart', 'chart: ¤shewart', 'chart: "shewart" is not known; did you mean "shewhart"?'],
      ['sigma: 0.07 mm', 'sigma: ¤0 mm', '0 mm is not allowed: a length here is above zero'],
      ['sigma: 0.07 mm', 'sigma: ¤0.07', '0.07 has no unit'],
      ['sigma: 0.07 mm', 'sigma: 0.07 mm, centre: ¤1.2 mm', '1697 sigmas from 120 mm'],
      ['limit: 3', 'limit: ¤0', 'expected a plain number, above zero, such as 3'],
      ['limit: 3', 'limit: 3, ¤slack: 0.5', 'unknown key "slack"'],
      ['2-of-3,', '¤2-of-4,', '"2-of-4" is not known here; did you mean "2-of-3"?'],
      ['[2-of-3, 8-in-a-row]', '¤[2-of-3, 2-of-3]', 'a rule is listed twice'],
    ],
    SHEWHART,
  );

  it('is told sigma once', () => {
    const message = 'expected exactly one of "sigma" (0.07 mm) and "learns"';
    const mark = (text: string) => text.replace('watch: {', 'watch: ¤{');
    expectRefused(mark(changed('sigma: 0.07 mm, ', '', SHEWHART)), message);
    expectRefused(mark(changed('sigma: 0.07 mm', 'sigma: 0.07 mm, learns: 50', SHEWHART)), message);
  });
});

describe('a watch by a CUSUM chart', () => {
  refuses(
    [
      ['slack: 0.5', 'slack: ¤-0.5', 'expected a plain number, not negative, such as 0.5'],
      ['head-start: 50 %', 'head-start: ¤150 %', 'a share here is from 0 % to 100 %'],
      ['head-start: 50 %', 'side: ¤upwards', '"upwards" is not known here'],
      ['head-start: 50 %', '¤head-strt: 50 %', 'unknown key "head-strt"; did you mean "head-start"?'],
    ],
    CUSUM,
  );
});

describe('a watch by an EWMA chart', () => {
  refuses(
    [
      ['weight: 20 %, limit', 'weight: ¤0 %, limit', 'a share here is above 0 % and up to 100 %'],
      ['weight: 20 %, limit', 'weight: ¤0.2, limit', '0.2 has no unit'],
      ['learns: 50', 'learns: ¤1', 'expected a whole number from 2'],
      ['mean-of: 2', 'mean-of: ¤0', 'expected a whole number from 1'],
    ],
    EWMA,
  );
});

describe('a watch of capability', () => {
  refuses(
    [
      ['capability: cpk', 'capability: ¤cpm', '"cpm" is not known here; did you mean "cp"?'],
      ['below: 1.33', 'below: ¤0', 'expected a plain number, above zero, such as 1.33'],
      ['of-last: 50', 'of-last: ¤1', 'expected a whole number from 2'],
      ['surely: 95 %', 'surely: ¤50 %', 'expected more than 50 % and less than 100 %'],
      ['surely: 95 %', 'surely: 95 %, ¤count: 5', 'unknown key "count"'],
    ],
    CAPABILITY,
  );

  it('needs limits', () => {
    expectRefused(
      changed('        tolerance: 0.2 mm\n', '', CAPABILITY).replace('of: rim, capab', 'of: ¤rim, capab'),
      '"rim" has no limits, so it has no capability',
    );
  });
});

describe('a retuning', () => {
  const line = 'weight: 20 %, deadband: 0.03 mm';
  const retune = (from: string) => [line, `${from}, deadband: 0.03 mm`] as const;
  refuses([
    [...retune('weight: ¤0 %'), 'a share here is above 0 % and up to 100 %'],
    [
      ...retune('weight: 20 %, gain: ¤-0.03 mm/bar'),
      '"heater" is a temperature, so its gain is a length per',
    ],
    [...retune('weight: 20 %, gain: ¤-0.03 °C'), 'expected a length per something'],
    [...retune('weight: 20 %, gain: ¤0 mm/°C'), 'a gain of zero cannot guide a setting'],
    [...retune('weight: 20 %, mean-of: ¤0'), 'expected a whole number from 1'],
    [...retune('rule: ¤deadbet'), '"deadbet" is not known here; did you mean "deadbeat"?'],
    [...retune('rule: deadbeat, weight: ¤20 %'), 'the rule deadbeat has no weight'],
    [...retune('weight: 20 %, step: ¤1 °C'), 'the rule ewma has no step'],
    [...retune('rule: step, step: ¤-1 °C'), 'a step is above zero'],
    [...retune('rule: step, step: ¤1 bar'), '"heater" is a temperature, so expected a step in its units'],
  ]);

  it('has what its rule needs', () => {
    const missing = (to: string) => changed(line, to).replace('- { do: retune', '- ¤{ do: retune');
    expectRefused(missing('deadband: 0.03 mm'), '"weight" is missing: the rule ewma needs the weight');
    expectRefused(missing('rule: step, deadband: 0.03 mm'), '"step" is missing: the rule step needs');
    const { responses } = parseScenario(changed(line, 'rule: deadbeat, deadband: 0 mm'), 'cell.yaml')
      .policies[2]!;
    expect(responses[1]).toMatchObject({ do: 'retune', rule: 'deadbeat', meanOf: 1 });
  });
});

it('the sample has what is changed here', () => expect(SOUND).toContain(SIGHTS));
