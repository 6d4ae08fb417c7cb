import { expect, it } from 'vitest';
import { whyUnwritten } from '../../src/experiment/write-failures.ts';

it('says in words why something could not be written, else what the system says', () => {
  expect(whyUnwritten(Object.assign(new Error('ENOSPC: no space'), { code: 'ENOSPC' }))).toBe(
    'the disk is full',
  );
  expect(whyUnwritten(new Error('odd'))).toBe('odd');
});
