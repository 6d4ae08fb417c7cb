import './no-eval.ts';
import { openPage } from './page.ts';
import { serve } from './worker.ts';

// One program for both sides: the page, and the worker that it makes of the same text.
if (typeof document === 'undefined') serve();
else openPage();
