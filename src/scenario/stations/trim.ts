import { z } from 'zod';
import { buffer } from '../buffers.ts';
import { entry } from '../fields.ts';
import { tool } from '../tool.ts';
import { operating } from './operating.ts';

export const trim = entry({ does: z.literal('trim'), ...operating, buffer, tool: tool.optional() });
