import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ForeignJournalError } from '../../../src/experiment/journal/errors.ts';
import { Journal } from '../../../src/experiment/journal/journal.ts';
import { recordLine } from '../../../src/experiment/journal/record.ts';
import { EXPERIMENT, inFolder, outcomeOf, TASKS } from './made-up.ts';

const RUNS = TASKS.map((_, run) => run);
const open = (folder: string, resume: boolean, experiment = EXPERIMENT) =>
  new Journal(folder, { experiment, resume });
const pathIn = (folder: string) => join(folder, 'runs.journal');

function written(runs: readonly number[] = RUNS): Buffer {
  return inFolder((folder) => {
    const journal = open(folder, false);
    for (const run of runs) journal.add(run, outcomeOf(run));
    journal.close();
    return readFileSync(journal.path);
  });
}

const WHOLE = written();
/** Where each line ends, bytes. */
const ENDS = [...WHOLE].flatMap((byte, at) => (byte === 0x0a ? [at + 1] : []));

describe('a journal', () => {
  it('gives back the runs that were noted, in whatever order they came', () => {
    inFolder((folder) => {
      const first = open(folder, false);
      expect(first.news).toEqual([]);
      first.add(2, outcomeOf(2));
      first.add(0, outcomeOf(0));
      first.close();
      const second = open(folder, true);
      expect(second.news).toEqual([`going on from ${first.path}: 2 of 4 runs are there`]);
      expect([...second.finished]).toStrictEqual([
        [2, outcomeOf(2)],
        [0, outcomeOf(0)],
      ]);
      second.close();
    });
  });

  it('has a run in its file before adding it is over', () => {
    inFolder((folder) => {
      const journal = open(folder, false);
      for (const run of RUNS) {
        journal.add(run, outcomeOf(run));
        expect(readFileSync(journal.path).length).toBe(ENDS[run + 1]);
      }
      journal.close();
    });
  });

  it('begins at the start where there is none', () => {
    inFolder((folder) => {
      const journal = open(folder, true);
      expect(journal.news[0]).toMatch(/^there is nothing in .* to go on from/);
      for (const run of RUNS) journal.add(run, outcomeOf(run));
      journal.close();
      expect(readFileSync(journal.path)).toEqual(WHOLE);
    });
  });

  it('cut at any byte is gone on from: no whole run is lost, and the missing ones make it what it was', () => {
    for (let cut = 0; cut <= WHOLE.length; cut++) {
      inFolder((folder) => {
        writeFileSync(pathIn(folder), WHOLE.subarray(0, cut));
        const journal = open(folder, true);
        const before = Math.max(0, ENDS.filter((end) => end <= cut).length - 1);
        expect([...journal.finished], `cut at ${cut}`).toStrictEqual(
          RUNS.slice(0, before).map((run) => [run, outcomeOf(run)]),
        );
        const torn = cut > ENDS[0]! && !ENDS.includes(cut);
        expect(journal.news[0]!.endsWith('; 1 broken record is left out')).toBe(torn);
        // To write takes its time, so not at all places.
        const goesOn = cut % 7 === 0 || ENDS.some((end) => Math.abs(end - cut) <= 2);
        if (goesOn) for (const run of RUNS.slice(before)) journal.add(run, outcomeOf(run));
        journal.close();
        if (goesOn) expect(readFileSync(journal.path), `cut at ${cut}`).toEqual(WHOLE);
      });
    }
  });

  it('spoilt anywhere gives right runs or is refused in a sentence', () => {
    const spoils = fc.array(fc.tuple(fc.nat({ max: WHOLE.length - 1 }), fc.nat({ max: 255 })), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(spoils, fc.nat({ max: WHOLE.length }), (places, cut) =>
        inFolder((folder) => {
          const bytes = Buffer.from(WHOLE);
          for (const [at, byte] of places) bytes[at] = byte;
          writeFileSync(pathIn(folder), bytes.subarray(0, Math.max(cut, 1)));
          const first = Math.min(cut, ...places.filter(([at, byte]) => WHOLE[at] !== byte).map(([at]) => at));
          const sound = ENDS.filter((end) => end <= first).length - 1;
          try {
            const journal = open(folder, true);
            for (const [run, outcome] of journal.finished) expect(outcome).toStrictEqual(outcomeOf(run));
            for (let run = 0; run < sound; run++) expect(journal.finished.has(run)).toBe(true);
            journal.close();
          } catch (error) {
            if (!(error instanceof ForeignJournalError)) throw error;
            expect(error.message).toMatch(/cannot be gone on from: it is no journal; give the command/);
            // Only where the first record itself is spoilt.
            expect(first).toBeLessThan(ENDS[0]!);
          }
          // Whatever happened, nobody is kept out.
          expect(existsSync(`${pathIn(folder)}.lock`)).toBe(false);
        }),
      ),
      { numRuns: 300 },
    );
  });

  it('keeps what stands behind a broken record, and takes a run that stands twice once', () => {
    inFolder((folder) => {
      const bytes = Buffer.concat([WHOLE, WHOLE.subarray(ENDS[3])]);
      bytes[ENDS[1]! + 20]! ^= 1;
      writeFileSync(pathIn(folder), bytes);
      const journal = open(folder, true);
      expect([...journal.finished.keys()]).toEqual([0, 2, 3]);
      expect(journal.news[0]).toMatch(/3 of 4 runs are there; 1 broken record is left out$/);
      journal.close();
    });
  });

  it('of another experiment is refused with the reason, and left as it is', () => {
    inFolder((folder) => {
      writeFileSync(pathIn(folder), WHOLE);
      const other = { ...EXPERIMENT, version: '1.3.0' };
      expect(() => open(folder, true, other)).toThrow(
        /it was written by mendline 1\.2\.3, and this is 1\.3\.0; .*leave out --resume to put it aside/,
      );
      expect(readFileSync(pathIn(folder))).toEqual(WHOLE);
      expect(readdirSync(folder)).toEqual(['runs.journal']);
    });
  });

  it('of a later format is refused by its format, not as a spoilt one', () => {
    inFolder((folder) => {
      writeFileSync(pathIn(folder), recordLine('{"format":"mendline journal 2","other":true}'));
      expect(() => open(folder, true)).toThrow('it is written as "mendline journal 2"');
    });
  });

  it('is no journal where something else stands in its place', () => {
    inFolder((folder) => {
      writeFileSync(pathIn(folder), 'policy,seed\n');
      expect(() => open(folder, true)).toThrow('it is no journal');
    });
    inFolder((folder) => {
      mkdirSync(pathIn(folder));
      expect(() => open(folder, true)).toThrow('a folder stands where a file should be');
      expect(readdirSync(folder)).toEqual(['runs.journal']);
    });
  });

  it('goes when the experiment is over, and when nothing is in it', () => {
    inFolder((folder) => {
      const journal = open(folder, false);
      journal.add(0, outcomeOf(0));
      journal.finish();
      open(folder, false).close();
      expect(readdirSync(folder)).toEqual([]);
    });
  });

  it('takes nothing once it is closed', () => {
    inFolder((folder) => {
      const journal = open(folder, false);
      journal.add(0, outcomeOf(0));
      journal.close();
      const { size } = statSync(journal.path);
      journal.add(1, outcomeOf(1));
      journal.close();
      journal.finish();
      expect(statSync(journal.path).size).toBe(size);
    });
  });

  it('is written by one at a time', () => {
    inFolder((folder) => {
      const journal = open(folder, false);
      expect(() => open(folder, true)).toThrow(`process ${process.pid} has been writing runs here since`);
      expect(() => open(folder, false)).toThrow('wait for its end, end it, or name another folder');
      journal.close();
      open(folder, false).close();
    });
  });
});

describe('a journal that was not finished, when an experiment begins anew', () => {
  const noted = (folder: string, experiment = EXPERIMENT) => {
    const journal = open(folder, false, experiment);
    journal.add(0, outcomeOf(0));
    return journal;
  };

  it('is put aside, which is said, each under a name of its own', () => {
    inFolder((folder) => {
      noted(folder, { ...EXPERIMENT, scenario: 'other' }).close();
      const second = noted(folder);
      expect(second.news).toEqual([
        `${second.path} held 1 run of an experiment that was not finished (it is of another scenario, or the scenario was altered since); it is now ${second.path}.1`,
      ]);
      second.close();
      const third = noted(folder);
      expect(third.news[0]).toContain('--resume would have gone on from it');
      expect(third.news[0]).toMatch(/it is now .*runs\.journal\.2$/);
      expect(readdirSync(folder).sort()).toEqual([
        'runs.journal',
        'runs.journal.1',
        'runs.journal.2',
        'runs.journal.lock',
      ]);
      // What is finished makes the one of the same experiment useless, not that of another.
      third.finish();
      expect(readdirSync(folder)).toEqual(['runs.journal.1']);
    });
  });

  it('is not worth a word where no run is in it', () => {
    inFolder((folder) => {
      writeFileSync(pathIn(folder), WHOLE.subarray(0, ENDS[0]! + 20));
      const journal = open(folder, false);
      expect(journal.news).toEqual([]);
      journal.close();
      expect(readdirSync(folder)).toEqual([]);
    });
  });

  it('is put aside, too, where it is something else', () => {
    inFolder((folder) => {
      writeFileSync(pathIn(folder), 'my notes');
      const journal = open(folder, false);
      expect(journal.news[0]).toMatch(/was no journal; it is now .*\.1$/);
      journal.close();
      expect(readFileSync(`${pathIn(folder)}.1`, 'utf8')).toBe('my notes');
    });
  });
});
