// The most memory that a process holds while many parts go through the reference line.
import { child, REFERENCE } from '../common/files.js';
import { heading, row } from '../common/table.js';

export async function memory() {
  heading('Memory: the most that a process held');
  for (const parts of [1e6, 1e7]) {
    const { bytes } = await child('memory', REFERENCE, parts);
    row(`${parts / 1e6} million parts through the reference line`, bytes / 1e6, 'MB', {
      ...(parts === 1e7 && { most: 150 }),
    });
  }
}
