/** El español, entero. */
import type { Words } from '../en/all.ts';
import { captures } from './captures.ts';
import { planner } from './planner.ts';
import { plate } from './plate.ts';
import { print } from './print.ts';
import { site } from './site.ts';
import { stage } from './stage.ts';
import { viewer } from './viewer.ts';

export const es: Words = { ...site, ...plate, captures, stage, viewer, planner, print };
