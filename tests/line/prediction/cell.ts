import { DimensionModel } from '../../../src/line/prediction/model.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';

/** A cell that forms trays from sheet and joins them to frames; the parameters are YAML. */
export function cell({
  run = 'run: { warm-up: 0 s, length: 2 h, seeds: 1 }',
  thickness = '',
  sheet = '',
  frame = 'groove: { nominal: 10 mm }',
  rim = '',
  others = '',
  correlations = '',
  mateCorrelations = '',
  settings = '',
  forming = '',
  trimming = '',
  perSheet = 1,
  measures = 'rim: { repeatability: 0 mm }',
  gaugeBuffer = 9,
  every = 1,
  inspection = '',
  fits = '- { hole: frame.groove, shaft: rim, least: 0 mm, most: 1 mm }',
  marking = '',
  reader = '{ reads: 90 %, unread: pass }',
  takesHold = '100 %',
  forcing = '',
  misfit = 'scrap',
  mateTries = 1,
  offLimits = 'pass',
  more = '',
} = {}): Scenario {
  return parseScenario(
    `mendline: 1
title: cell
about: worked out by hand
${run}
stock:
  sheet: { unlimited: true${thickness && `, thickness: ${thickness}`}${sheet && `, ${sheet}`} }
  frame:
    unlimited: true
    features:
      ${frame}
    ${mateCorrelations && `correlations: ${mateCorrelations}`}
parts:
  tray:
    features:
      rim: { nominal: 10 mm, made-at: forming${rim && `, ${rim}`} }
${others}
    ${correlations && `correlations: ${correlations}`}
stations:
  forming:
    does: form
    takes: sheet
    makes: tray
    per-sheet: ${perSheet}
    cycle: 5 s
    ${settings && `settings: ${settings}`}
    ${forming}
    to: trimming
  trimming: { does: trim, buffer: 9, cycle: 1 s, to: marking${trimming && `, ${trimming}`} }
  marking: { does: mark, buffer: 9, cycle: 1 s, takes-hold: ${takesHold}, to: gauging${marking && `, ${marking}`} }
  gauging:
    does: gauge
    buffer: ${gaugeBuffer}
    cycle: 1 s
    ${inspection || `every: ${every}`}
    measures:
      ${measures}
    off-limits: ${offLimits}
    reader: ${reader}
    to: assembly
  assembly:
    does: assemble
    buffer: 9
    takes: [frame]
    cycle: 1 s
    fits:
      ${fits}
    ${forcing && `forcing: ${forcing}`}
    misfit: ${misfit}
    mate-tries: ${mateTries}
    to: good
${more}
policies: { carry on: [] }
`,
    'cell.yaml',
  );
}

export const modelOf = (given: Parameters<typeof cell>[0]): DimensionModel => new DimensionModel(cell(given));
