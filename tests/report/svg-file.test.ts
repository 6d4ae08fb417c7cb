import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { intervalCharts } from '../../src/report/charts.ts';
import { STATE_LOOKS } from '../../src/report/state-words.ts';
import { svgFile } from '../../src/report/svg-file.ts';
import { outcome } from './fake.ts';
import { ORIGIN } from './origin-sample.ts';

const HOSTILE = '<b> & "c"\u001b\u0000 --> ]]>';

function made(policy = 'a') {
  const outcomes = [1, 2].map((seed) => outcome(policy, seed, { fit_rate: 0.5 + seed / 100 }));
  const [svg] = intervalCharts(compare([policy], outcomes));
  const title = `fit rate of ${policy} ${'and so on '.repeat(9)}`;
  return svgFile({ svg: svg!, title, key: 'Dot: mean. '.repeat(9), legend: [STATE_LOOKS.down] }, ORIGIN);
}

/** Names of elements as they open and close: a document is sound where each closes what opened last. */
function unclosed(text: string): string[] {
  const open: string[] = [];
  for (const [, close, name, rest] of text.matchAll(/<(\/?)([a-z]+)((?:"[^"]*"|[^<>"])*)>/g)) {
    if (close) expect(open.pop()).toBe(name);
    else if (!rest!.endsWith('/')) open.push(name!);
  }
  return open;
}

describe('svgFile', () => {
  it('stands by itself: nothing of the page in it, nothing fetched', () => {
    const text = made();
    expect(text).toMatch(
      /^<\?xml version="1\.0" encoding="UTF-8"\?>\n<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" /,
    );
    expect(text).not.toMatch(/currentColor|var\(|system-ui|href|url\(|height: auto/);
    expect(text).toContain('font-family="Helvetica, Arial, sans-serif"');
    expect(text).toContain(`fill="${STATE_LOOKS.down.colour}"`);
  });

  it.each(['a', HOSTILE])('is sound XML whatever a policy is called: %j', (policy) => {
    const text = made(policy);
    expect(unclosed(text)).toEqual([]);
    // XML knows five names of signs, and no control characters but these.
    expect(text.replace(/&(?:amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
    expect(text.replace(/[\n\t]/g, '')).not.toMatch(/\p{Cc}/u);
  });

  it('says where it comes from', () => {
    expect(made()).toContain('\ncommand: mendline compare a.yaml --only &quot;hold back&quot;\n');
  });

  it('is as high as what it holds', () => {
    const text = made();
    const height = Number(/ height="(\d+)" viewBox/.exec(text)![1]);
    const places = [...text.matchAll(/<text x="12" y="(\d+)"/g)].map(([, y]) => Number(y));
    expect(places.length).toBeGreaterThan(4);
    expect(Math.max(...places)).toBeLessThan(height);
    expect(Math.max(...places)).toBeGreaterThan(height - 30);
  });
});
