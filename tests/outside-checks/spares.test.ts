import { SPARES } from './cases/spares.ts';
import { checkCases } from './check-cases.ts';

checkCases('machines with spares', SPARES);
