import { describe, expect, it } from 'vitest';
import { readDoubleRatio, readQuantity, readRatio } from '../../src/scenario/units.ts';

describe('readQuantity', () => {
  // The SI brochure, 9th edition, for the SI units, the minute, hour, day and bar; NIST SP 811 for the inch.
  it.each([
    ['1 s', 1, 'time'],
    ['1 ms', 0.001, 'time'],
    ['1 min', 60, 'time'],
    ['1 h', 3600, 'time'],
    ['1 d', 86400, 'time'],
    ['1 mm', 1, 'length'],
    ['1 um', 0.001, 'length'],
    ['1 \u00b5m', 0.001, 'length'],
    ['1 \u03bcm', 0.001, 'length'],
    ['1 cm', 10, 'length'],
    ['1 m', 1000, 'length'],
    ['1 in', 25.4, 'length'],
    ['1 °C', 1, 'temperature'],
    ['1 C', 1, 'temperature'],
    ['1 K', 1, 'temperature'],
    ['1 kPa', 1, 'pressure'],
    ['1 Pa', 0.001, 'pressure'],
    ['1 bar', 100, 'pressure'],
    ['1 mbar', 0.1, 'pressure'],
    ['1 %', 0.01, 'share'],
    ['1 /s', 1, 'rate'],
    ['1 /min', 1 / 60, 'rate'],
    ['1 /h', 1 / 3600, 'rate'],
    ['1 /d', 1 / 86400, 'rate'],
  ])('takes %s into base units', (text, value, dimension) => {
    const read = readQuantity(text)!;
    expect(read.dimension).toBe(dimension);
    expect(read.value).toBeCloseTo(value, 15);
  });

  it.each([
    ['42 s', 42],
    ['42s', 42],
    ['  42   s ', 42],
    ['+4.5 s', 4.5],
    ['-4.5 s', -4.5],
    ['\u22124.5 s', -4.5],
    ['.5 s', 0.5],
    ['5. s', 5],
    ['1.5e3 s', 1500],
    ['12 /s', 12],
  ])('reads the number of "%s"', (text, value) => {
    expect(readQuantity(text)!.value).toBe(value);
  });

  it.each([
    '',
    's',
    '42',
    '42 S',
    '42 sec',
    '4,2 s',
    '4 2 s',
    '0x10 s',
    'Infinity s',
    'NaN s',
    '1e999 s',
    '--1 s',
    '1 s/',
    '1 toString',
    '1 constructor',
  ])('takes "%s" for no quantity', (text) => {
    expect(readQuantity(text)).toBeUndefined();
  });
});

describe('readRatio', () => {
  it.each([
    ['0.012 mm/°C', 0.012, 'length', 'temperature'],
    ['12 um/K', 0.012, 'length', 'temperature'],
    ['1 cm / bar', 0.1, 'length', 'pressure'],
    ['1 min/mm', 60, 'time', 'length'],
    ['16 s/mm', 16, 'time', 'length'],
    ['-2 mm/mm', -2, 'length', 'length'],
    ['1 mm/\u03bcm', 1000, 'length', 'length'],
  ])('takes %s into base units', (text, value, of, per) => {
    const read = readRatio(text)!;
    expect({ of: read.of, per: read.per }).toEqual({ of, per });
    expect(read.value).toBeCloseTo(value, 12);
  });

  it.each(['12 /h', '12 mm', 'mm/°C', '1 mm/', '1 mm/0', '1 mm/2 °C', '/', '1 mm/toString'])(
    'takes "%s" for no ratio',
    (text) => {
      expect(readRatio(text)).toBeUndefined();
    },
  );
});

describe('readDoubleRatio', () => {
  it.each([
    ['0.002 mm/°C²', 0.002, 'temperature', 'temperature'],
    ['0.002 mm/°C^2', 0.002, 'temperature', 'temperature'],
    ['0.002 mm / °C ^2 ', 0.002, 'temperature', 'temperature'],
    ['2 um/K/K', 0.002, 'temperature', 'temperature'],
    ['0.001 mm/°C/kPa', 0.001, 'temperature', 'pressure'],
    ['-0.1 mm/bar/°C', -0.001, 'pressure', 'temperature'],
    ['3 mm/cm²', 0.03, 'length', 'length'],
    ['3 mm/mm/°C', 3, 'length', 'temperature'],
  ])('takes %s into base units', (text, value, one, other) => {
    const read = readDoubleRatio(text)!;
    expect({ of: read.of, per: read.per }).toEqual({ of: 'length', per: [one, other] });
    expect(read.value).toBeCloseTo(value, 15);
  });

  it.each([
    '0.002 mm/°C',
    '0.002 mm',
    '2 mm²',
    '/',
    'mm/°C²',
    '1 mm/°C/°C²',
    '1 mm/²',
    '1 mm/°C³',
    '1 mm//°C',
  ])('takes "%s" for none', (text) => {
    expect(readDoubleRatio(text)).toBeUndefined();
  });
});
