import { inflateRawSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { traced } from '../../../src/experiment/traced.ts';
import { packed, unpacked } from '../../../src/report/watch/packed.ts';
import { playbackOf } from '../../../src/report/watch/playback-of.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { quick } from '../../cli/command.ts';

const TITLE = 'Stra\u00dfe \u2013 \u5de5 </script>';
const scenario = parseScenario(quick({ policy: TITLE }), 'quick.yaml');
const playback = playbackOf(traced(scenario, TITLE, 1).trace, scenario);
const text = packed(playback);

it('is what another reader of RFC 1951 reads, and comes back as it was', () => {
  const plain = JSON.stringify(playback);
  expect(inflateRawSync(Buffer.from(text, 'base64')).toString('utf8')).toBe(plain);
  expect(JSON.stringify(unpacked(text))).toBe(plain);
});

it('is less than half as long as what it holds, and nothing that a page would take for its own', () => {
  expect(text.length).toBeLessThan(JSON.stringify(playback).length / 2);
  expect(text).toMatch(/^[A-Za-z0-9+/=]+$/);
});
