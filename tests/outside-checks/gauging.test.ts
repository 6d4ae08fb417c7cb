import { GAUGING } from './cases/gauging.ts';
import { checkCases } from './check-cases.ts';

checkCases('gauging', GAUGING);
