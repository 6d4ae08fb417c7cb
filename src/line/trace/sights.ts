import { clearance } from '../fit.ts';
import type { Line } from '../line.ts';
import type { Assemble } from '../operations/assemble.ts';
import type { Gauge } from '../operations/gauge.ts';
import type { Reader } from '../reader.ts';
import type { Log } from './log.ts';
import type { Attempt, PartEvent } from './part-events.ts';
import type { Supply } from './supply.ts';
import { tap } from './tap.ts';

type Readings = Extract<PartEvent, { kind: 'gauged' }>['readings'];

/** Writes down what is seen of parts: marks that are looked for, readings, attempts to assemble. */
export function followSights(line: Line, log: Log, supply: Supply): void {
  for (const [station, gauge] of line.gauges) {
    if (gauge.reader !== null) followReader(gauge.reader, station, log);
    followGauge(gauge, station, log);
  }
  for (const [station, assembly] of line.assemblies) {
    if (assembly.reader !== null) followReader(assembly.reader, station, log);
    followAttempts(assembly, station, line, log, supply);
    followAside(assembly, station, log, supply);
  }
}

function followReader(reader: Reader, station: string, log: Log): void {
  let failed = false;
  reader.listeners.push((unread) => {
    failed = unread;
  });
  tap(reader, 'read', (inner) => (row, stays) => {
    const known = inner(row, stays);
    const how = failed ? (known ? 'by-hand' : 'not-read') : 'read';
    log.tell(row, { station, kind: 'read', how, sent: reader.sent !== null });
    return known;
  });
}

function followGauge(gauge: Gauge, station: string, log: Log): void {
  let row = 0;
  let known = false;
  let readings: Readings[number][] = [];
  for (const gauging of gauge.on.gaugings) {
    // Each reading is told just after the next one of the same part was drawn.
    tap(gauging, 'renew', (inner) => (of) => {
      row = of;
      inner(of);
    });
  }
  gauge.readingListeners.push((feature, reading, of) => {
    known = of !== null;
    const off = gauge.on.gaugings.find((gauging) => gauging.feature === feature)!.isOff(reading);
    readings.push({ feature: feature.spec.name, reading, off });
  });
  gauge.judgementListeners.push((off) => {
    log.tell(row, { station, kind: 'gauged', readings, known, off });
    readings = [];
  });
}

/** What came of an attempt, by the counts that changed. */
const COUNTED = { tight: 'tight', loose: 'loose', pressed: 'forced', spoilt: 'damaged' } as const;

function followAttempts(assembly: Assemble, station: string, line: Line, log: Log, supply: Supply): void {
  let misfit = false;
  assembly.fitListeners.push((so) => {
    misfit = so;
  });
  const words = Object.keys(COUNTED) as (keyof typeof COUNTED)[];
  tap(assembly, 'attempt', (inner) => (row, hand) => {
    const { tally, parts } = line;
    const { pairs } = assembly.on;
    const before = words.map((word) => tally[COUNTED[word]]);
    const mates = supply.matesIn(hand);
    const clearances = pairs.map((pair) =>
      clearance(pair, parts.get(row, pair.feature.truth), hand.mate[pair.mate]!),
    );
    const place = inner(row, hand);
    const found = words.find((word, i) => tally[COUNTED[word]] > before[i]!);
    const result: Attempt = misfit ? (found ?? 'flawed') : 'fits';
    log.tell(row, { station, kind: 'tried', mates, result });
    if (clearances.length > 0) log.reveal(row, { station, kind: 'clearances', clearances });
    return place;
  });
}

function followAside({ ahead }: Assemble, station: string, log: Log, supply: Supply): void {
  if (ahead === null) return;
  tap(ahead.aside, 'expect', (inner) => (row, hand) => {
    log.tell(row, { station, kind: 'aside', mates: supply.matesIn(hand) });
    inner(row, hand);
  });
}
