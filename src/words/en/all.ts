/** English, whole: the shape that every other language has. */
import { captures } from './captures.ts';
import { planner } from './planner.ts';
import { plate } from './plate.ts';
import { print } from './print.ts';
import { site } from './site.ts';
import { stage } from './stage.ts';
import { viewer } from './viewer.ts';

export const en = { ...site, ...plate, captures, stage, viewer, planner, print };

export type Words = typeof en;
