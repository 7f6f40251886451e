/** A day given on the command line, today where none is. */
import { textOption, type Given } from './command.ts';
import { WrongUse } from './wrong-use.ts';

/** @returns `YYYY-MM-DD`. @throws WrongUse if something else was given. */
export function dayOption(given: Given, name: string): string {
  const day = textOption(given, name) ?? new Date().toISOString().slice(0, 10);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day)) {
    throw new WrongUse(`--${name} takes a day, such as 2026-03-02, but was given "${day}".`);
  }
  return day;
}
