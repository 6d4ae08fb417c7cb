import { FORMING } from './cases/forming.ts';
import { checkCases } from './check-cases.ts';

checkCases('forming', FORMING);
