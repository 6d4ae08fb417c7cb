import { STOCKS } from './cases/stocks.ts';
import { checkCases } from './check-cases.ts';

checkCases('stock theory', STOCKS);
