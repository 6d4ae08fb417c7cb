import type { Sampler } from '../kernel/distributions/distribution.ts';
import { standardNormal } from '../kernel/distributions/normal.ts';
import type { Streams } from '../kernel/streams.ts';
import type { MarkQualitySpec } from '../scenario/stations/mark-quality.ts';
import { codewordsOf, wrongCodewords } from '../standards/data-matrix.ts';
import {
  gradeOf,
  MARK_LADDERS,
  type MarkParameter,
  parameterGrade,
  unusedErrorCorrection,
} from '../standards/mark-grade.ts';

/** Draws one parameter of a mark: `next` begins a mark, `scan` gives its grade in a scan, from 4 to 0. */
interface Parameter {
  next(): void;
  scan(): number;
}

type Measured = NonNullable<MarkQualitySpec['contrast']>;
type ErrorCorrection = NonNullable<MarkQualitySpec['unusedErrorCorrection']>;

/** A value that is normal from mark to mark and, about the mark's own, from scan to scan. */
function measured(
  parameter: MarkParameter,
  { mean, sd, scanSd }: Measured,
  streams: Streams,
  purpose: string,
): Parameter {
  const own = standardNormal(streams.of(purpose));
  const scan = standardNormal(streams.of(`${purpose}/scan`));
  let ofMark = mean;
  return {
    next() {
      ofMark = sd > 0 ? mean + sd * own() : mean;
    },
    scan: () => parameterGrade(parameter, scanSd > 0 ? ofMark + scanSd * scan() : ofMark),
  };
}

/** The error correction that is left over a binomial number of wrong codewords. */
function errorCorrection(spec: ErrorCorrection, streams: Streams, purpose: string): Parameter {
  const draw = streams.of(`${purpose}/scan`);
  const { check } = codewordsOf(spec.symbol);
  const chances = wrongCodewords(spec.symbol, spec.wrongCodewords);
  const grades = chances.map((_, wrong) =>
    parameterGrade('unusedErrorCorrection', unusedErrorCorrection(0, wrong, check)),
  );
  return {
    next() {},
    scan() {
      let left = draw() - chances[0]!;
      let wrong = 0;
      while (left >= 0 && wrong < chances.length - 1) left -= chances[++wrong]!;
      return grades[wrong]!;
    },
  };
}

/**
 * A sampler of the grades of marks, as places in `GRADES`: the lowest parameter grades a scan, the mean over the scans
 * the mark (ISO/IEC 15415). Each parameter has streams of its own, named after `purpose`.
 */
export function markGrades(spec: MarkQualitySpec, streams: Streams, purpose: string): Sampler {
  const parameters: Parameter[] = [];
  for (const parameter of Object.keys(MARK_LADDERS) as MarkParameter[]) {
    const given = spec[parameter];
    if (given === undefined) continue;
    const own = `${purpose}/${parameter}`;
    parameters.push(
      'symbol' in given ? errorCorrection(given, streams, own) : measured(parameter, given, streams, own),
    );
  }
  const { scans } = spec;
  return () => {
    let sum = 0;
    for (const parameter of parameters) parameter.next();
    for (let scan = 0; scan < scans; scan++) {
      let lowest = 4;
      for (const parameter of parameters) lowest = Math.min(lowest, parameter.scan());
      sum += lowest;
    }
    return gradeOf(sum / scans);
  };
}
