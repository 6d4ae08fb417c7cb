import { afterEach, describe, expect, it, vi } from 'vitest';
import { coloured, columns } from '../../src/cli/look.ts';

const { isTTY, columns: wide } = process.stdout;
afterEach(() => {
  Object.assign(process.stdout, { isTTY, columns: wide });
  vi.unstubAllEnvs();
});

describe('the look of the output', () => {
  it('has colour on a terminal alone, and none where NO_COLOR is set to anything', () => {
    vi.stubEnv('NO_COLOR', undefined);
    Object.assign(process.stdout, { isTTY: true });
    expect(coloured()).toBe(true);
    vi.stubEnv('NO_COLOR', '0');
    expect(coloured()).toBe(false);
    vi.stubEnv('NO_COLOR', '');
    expect(coloured()).toBe(true);
    Object.assign(process.stdout, { isTTY: undefined });
    expect(coloured()).toBe(false);
  });

  it.each([
    [undefined, 80],
    [0, 80],
    [20, 60],
    [72, 72],
    [300, 100],
  ])('at %s columns of the terminal is %d wide', (given, width) => {
    Object.assign(process.stdout, { columns: given });
    expect(columns()).toBe(width);
  });
});
