import { CHARTS } from './cases/charts.ts';
import { checkCases } from './check-cases.ts';

checkCases('monitoring', CHARTS);
