import { RETUNING } from './cases/retuning.ts';
import { checkCases } from './check-cases.ts';

checkCases('run-to-run control', RETUNING);
