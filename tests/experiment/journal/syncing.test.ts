import { closeSync, openSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { Syncing, syncFolder } from '../../../src/experiment/journal/syncing.ts';
import { inFolder } from './made-up.ts';

it('remembers that what was written could not be put on the disk, and asks for it by itself', async () => {
  const fd = inFolder((folder) => openSync(join(folder, 'file'), 'w'));
  const syncing = new Syncing(fd);
  syncing.soon();
  closeSync(fd);
  await setTimeout(1500);
  expect(syncing.failure).toMatchObject({ code: 'EBADF' });
});

it('waits for the disk only where something was written since', () => {
  inFolder((folder) => {
    const fd = openSync(join(folder, 'file'), 'w');
    const syncing = new Syncing(fd);
    syncing.soon();
    syncing.now();
    closeSync(fd);
    // The file is closed, so that to ask again would fail.
    syncing.now();
    syncing.soon();
    expect(() => syncing.now()).toThrow('EBADF');
  });
});

it('lets a folder be that cannot be opened', () => {
  expect(() => syncFolder(join('no', 'such', 'folder'))).not.toThrow();
});
