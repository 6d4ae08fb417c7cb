import { z } from 'zod';

// The page forbids code made from text, and the validator would try whether it may. Must come before any schema is made.
z.config({ jitless: true });
