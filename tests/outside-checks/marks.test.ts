import { MARKS } from './cases/marks.ts';
import { checkCases } from './check-cases.ts';

checkCases('marks and readers', MARKS);
