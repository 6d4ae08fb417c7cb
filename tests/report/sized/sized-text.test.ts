import { describe, expect, it } from 'vitest';
import { sizedText } from '../../../src/report/sized/sized-text.ts';
import { throughput } from '../../experiment/sizing/made-up.ts';
import { flat, leadTime, PLAIN, sample } from './sample.ts';

describe('a sizing as text', () => {
  it('tells the choice, how surely what holds of it, and among how many', async () => {
    const found = await sample();
    const text = sizedText(found, PLAIN);
    const [a, b, c] = found.chosen!.values;
    expect(text).toContain(
      `Enough at least cost: a ${a}, b ${b} and c ${c}, for ${found.chosen!.cost} crowns a week.`,
    );
    expect(flat(text)).toContain(
      'With probability at least 95 %, it meets throughput at least 80 good /h in the mean, and none of the ',
    );
    expect(flat(text)).toContain('cheaper ones that were checked meets it by 2 good /h or more.');
    expect(flat(text)).toContain(
      `${found.configurations.length} of 192 possible choices of sizes were simulated; nothing is said of the others.`,
    );
    expect(flat(text)).toContain('for risk assessment, local codes and competent people');
  });

  it('fits 80 columns, long names and several targets included', async () => {
    const long = ['places in front of the trimming press', 'places in front of assembly', 'fitters on shift'];
    for (const found of [
      await sample({ names: long, targets: [throughput(80, 2), leadTime] }),
      await sample(),
    ])
      for (const line of sizedText(found, PLAIN).split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  it('says when nothing meets the target, when the smallest do, and when it ended early', async () => {
    const none = flat(sizedText(await sample({ targets: [throughput(200, 2)] }), PLAIN));
    expect(none).toContain(
      'No choice of sizes that was simulated is shown to meet throughput at least 200 good /h.',
    );
    expect(none).toContain(
      'With probability at least 95 %, none of them meets the target by 2 good /h or more.',
    );
    const smallest = flat(sizedText(await sample({ targets: [throughput(40, 2)] }), PLAIN));
    expect(smallest).toContain('The smallest of all sizes meet the target already');
    const nothing = flat(sizedText(await sample({ settings: { atMost: 5 } }), PLAIN));
    expect(nothing).toContain(
      'The runs ended before any choice of sizes had its first runs, so nothing is said.',
    );
    const early = flat(sizedText(await sample({ settings: { atMost: 330 } }), PLAIN));
    expect(early).toContain('It ended after 330 runs');
    expect(early).toContain('--at-most');
  });

  it('says of a whole one that all were simulated', async () => {
    const text = flat(sizedText(await sample({ settings: { whole: true } }), PLAIN));
    expect(text).toContain('All 192 possible choices of sizes were simulated.');
  });
});
