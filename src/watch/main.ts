import { openPage } from './page.ts';

openPage();
