import { NETWORKS } from './cases/networks.ts';
import { checkCases } from './check-cases.ts';

checkCases('networks of queues', NETWORKS);
