import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beginsRecord, readRecord, recordLine } from '../../../src/experiment/journal/record.ts';

const withoutBreak = (line: Buffer) => line.subarray(0, -1);

describe('a record', () => {
  it('carries the CRC-32 that the catalogues give 123456789', () => {
    // Check value of CRC-32/ISO-HDLC in every table of CRCs, e.g. G. Cook's catalogue: cbf43926.
    expect(recordLine('123456789').toString()).toBe('9 cbf43926 123456789\n');
    expect(crc32('123456789')).toBe(0xcbf43926);
  });

  it('is read as it was written, and is one line whatever it says', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const json = JSON.stringify(value);
        const line = recordLine(json);
        expect(line.indexOf(0x0a)).toBe(line.length - 1);
        expect(readRecord(withoutBreak(line))).toBe(json);
      }),
    );
  });

  it('is not whole once it is cut anywhere or a byte of it is another', () => {
    const line = withoutBreak(recordLine('{"name":"ein Stück Blech €"}'));
    for (let end = 0; end < line.length; end++) {
      expect(readRecord(line.subarray(0, end)), `${end}`).toBeNull();
      const other = Buffer.from(line);
      other[end]! ^= 1;
      expect(readRecord(other), `${end}`).toBeNull();
    }
  });

  it('is known by how it begins, wherever it is cut', () => {
    const line = recordLine('{"name":"Blech"}');
    for (let end = 0; end < line.length; end++) expect(beginsRecord(line.subarray(0, end))).toBe(true);
    for (const other of ['policy,seed', '# notes', '12 no', '12 00000000 words'])
      expect(beginsRecord(Buffer.from(other)), other).toBe(false);
  });
});
