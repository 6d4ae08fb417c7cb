import type { Case } from './case.ts';
import { CHARTS } from './charts.ts';
import { CLOSED_LINES } from './closed-lines.ts';
import { EXPONENTIAL_LINES } from './exponential-lines.ts';
import { FAILING_LINES } from './failing-lines.ts';
import { FITS } from './fits.ts';
import { FORMING } from './forming.ts';
import { GAUGING } from './gauging.ts';
import { MARKS } from './marks.ts';
import { NETWORKS } from './networks.ts';
import { OTHERS } from './others.ts';
import { QUEUES } from './queues.ts';
import { REPAIRERS } from './repairers.ts';
import { RETUNING } from './retuning.ts';
import { SPARES } from './spares.ts';
import { STACKS } from './stacks.ts';
import { STOCKS } from './stocks.ts';
import { TRIMMING } from './trimming.ts';

interface Group {
  readonly title: string;
  readonly cases: readonly Case[];
}

/** Every case, in the order of the table. */
export const GROUPS: readonly Group[] = [
  { title: 'Queues', cases: QUEUES },
  { title: 'Networks of queues', cases: NETWORKS },
  { title: 'Machines that share repairers', cases: REPAIRERS },
  { title: 'Closed lines', cases: CLOSED_LINES },
  { title: 'Lines of stations that do not fail', cases: EXPONENTIAL_LINES },
  { title: 'Lines of stations that fail', cases: FAILING_LINES },
  { title: 'Forming', cases: [...FORMING, ...STACKS] },
  { title: 'Trimming and rework', cases: TRIMMING },
  { title: 'Marks and readers', cases: MARKS },
  { title: 'Gauging and acceptance sampling', cases: GAUGING },
  { title: 'Fits', cases: FITS },
  { title: 'Monitoring', cases: CHARTS },
  { title: 'Run-to-run control', cases: RETUNING },
  { title: 'Stocks', cases: STOCKS },
  { title: 'Spare parts', cases: SPARES },
  { title: 'Others', cases: OTHERS },
];
