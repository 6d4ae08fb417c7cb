import { traced } from '../../../src/experiment/traced.ts';
import type { Trace } from '../../../src/line/trace/trace.ts';
import type { TraceSource } from '../../../src/report/trace/trace-json.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';

/**
 * Two trays a sheet every 10 s, from 0 to 60 s, the second 2 mm too large: gauged, and scrapped as it does not fit. Each
 * meets a frame, of which an order of 4 takes 5 s. A station, a disturbance and a response have names that a spreadsheet would run.
 */
const ODD = `mendline: 1
title: An odd cell
about: Invented, and worked out by hand.
run: { warm-up: 5 s, length: 55 s, seeds: 1 }
stock:
  sheet: { unlimited: true }
  frame: { on-hand: 2, reorder-at: 1, order: 4, lead-time: 5 s, features: { groove: { nominal: 11 mm } } }
parts:
  tray: { features: { rim: { nominal: 10 mm, tolerance: 0.5 mm, made-at: forming, cavities: [0 mm, 2 mm] } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 2, cycle: 10 s, to: marking }
  marking: { does: mark, buffer: 4, cycle: 1 s, takes-hold: 100 %, to: "=gauging" }
  "=gauging":
    does: gauge
    buffer: 4
    cycle: 1 s
    every: 2
    measures: { rim: { repeatability: 0 mm, bias: 0.25 mm } }
    off-limits: pass
    reader: { reads: 100 %, unread: pass }
    to: fitting
  fitting:
    does: assemble
    machines: 2
    buffer: 4
    takes: [frame]
    cycle: 1 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0.5 mm, most: 1.5 mm }]
    misfit: scrap
    to: good
disturbances:
  "@off": { disturbs: station, station: marking, at: 30 s, for: 5 s }
policies:
  "-carry on":
    - { do: hold, name: "+wait", station: forming, when: { station: marking, is: down } }
`;

export const oddScenario = (): Scenario => parseScenario(ODD, 'odd.yaml');
export const oddTrace = (): Trace => traced(oddScenario(), '-carry on', 1).trace;

export const SOURCE = (): TraceSource => ({
  trace: oddTrace(),
  from: {
    ...{ version: '0.1.0', command: ['trace', 'odd.yaml', '--seed', '1'] },
    scenario: { file: 'odd.yaml', title: 'An odd cell', sha256: '0'.repeat(64) },
  },
});
