import { QUEUES } from './cases/queues.ts';
import { checkCases } from './check-cases.ts';

checkCases('queues', QUEUES);
