import { REPAIRERS } from './cases/repairers.ts';
import { checkCases } from './check-cases.ts';

checkCases('machines that share repairers', REPAIRERS);
