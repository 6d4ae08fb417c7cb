import { FORMING } from './cases/forming.ts';
import { STACKS } from './cases/stacks.ts';
import { checkCases } from './check-cases.ts';

checkCases('forming', FORMING);
checkCases('stacks', STACKS);
