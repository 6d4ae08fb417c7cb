import { CLOSED_LINES } from './cases/closed-lines.ts';
import { checkCases } from './check-cases.ts';

checkCases('closed lines', CLOSED_LINES);
