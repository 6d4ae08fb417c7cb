import { TRIMMING } from './cases/trimming.ts';
import { checkCases } from './check-cases.ts';

checkCases('trimming and rework', TRIMMING);
