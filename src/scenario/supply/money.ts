import { z } from 'zod';

const error = 'expected an amount of money, 0 or more, as a plain number such as 4.20';

/** An amount in a currency of the scenario's own, the same throughout; never negative. */
export const money = z.number({ error }).min(0, { error });
