import { describe, expect, it } from 'vitest';
import { join } from '../../src/scenario/join.ts';

const line = { source: 'line.yaml', raw: { title: 'a line', policies: { 'carry on': [] } } };

describe('join', () => {
  it('puts the entries of supplements behind those of the line, in order, and knows whose they are', () => {
    const { raw, taken, ownerOf } = join(line, [
      { source: 'a.yaml', raw: { title: 'a', policies: { wait: [1] }, disturbances: { cold: 2 } } },
      { source: 'b.yaml', raw: { title: 'b', policies: { hurry: [3] } } },
    ]);
    expect(raw).toEqual({
      title: 'a line',
      disturbances: { cold: 2 },
      policies: { 'carry on': [], wait: [1], hurry: [3] },
    });
    expect(Object.keys((raw as { policies: object }).policies)).toEqual(['carry on', 'wait', 'hurry']);
    expect(taken).toEqual([[], []]);
    const owner = (...path: PropertyKey[]) => ownerOf({ path, message: '' });
    expect([owner('policies', 'carry on', 0), owner('title'), owner()]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect([owner('policies', 'wait', 0), owner('disturbances', 'cold')]).toEqual([0, 0]);
    expect(owner('policies', 'hurry')).toBe(1);
    expect(ownerOf({ path: ['policies'], key: 'hurry', message: '' })).toBe(1);
  });

  it('leaves a name to who had it first, and tells the other of whom', () => {
    const { raw, taken } = join(line, [
      { source: 'a.yaml', raw: { policies: { wait: [1], 'carry on': [2] } } },
      { source: 'b.yaml', raw: { policies: { wait: [3] } } },
    ]);
    expect(raw).toMatchObject({ policies: { 'carry on': [], wait: [1] } });
    expect(taken.map((found) => found.map(({ path, key, message }) => [path, key, message]))).toEqual([
      [[['policies'], 'carry on', expect.stringContaining('is a policy of line.yaml already')]],
      [[['policies'], 'wait', expect.stringContaining('is a policy of a.yaml already')]],
    ]);
  });

  it('leaves alone what is no mapping', () => {
    const wrong = { source: 'line.yaml', raw: { policies: [] } };
    expect(join(wrong, [{ source: 'a.yaml', raw: { policies: { wait: [] } } }]).raw).toEqual({
      policies: [],
    });
    expect(join(line, [{ source: 'a.yaml', raw: undefined }]).raw).toEqual(line.raw);
    expect(join({ source: 'line.yaml', raw: 3 }, [{ source: 'a.yaml', raw: {} }]).raw).toBe(3);
  });

  it('does not change the data of the line', () => {
    join(line, [{ source: 'a.yaml', raw: { policies: { wait: [] } } }]);
    expect(line.raw.policies).toEqual({ 'carry on': [] });
  });
});
