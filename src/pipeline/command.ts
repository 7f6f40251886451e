/**
 * What all commands share: options checked in one place, `--help` with an example, and exit
 * codes: 0 done, 1 findings of level error or a failed plate, 2 wrong use.
 */
import { parseArgs, type ParseArgsOptionsConfig } from 'node:util';
import { z } from 'zod';
import { WrongUse } from './wrong-use.ts';

export interface Command {
  /** First line of the help: what the command does. */
  readonly summary: string;
  /** A line to copy. */
  readonly example: string;
  readonly options: Readonly<Record<string, OptionHelp>>;
  /** What stands after the options, such as `[slug...]`. */
  readonly positionals?: string;
}

interface OptionHelp {
  readonly type: 'string' | 'boolean';
  readonly help: string;
  /** Name of the value in the help, `FOLDER`. */
  readonly value?: string;
}

export type Given = Readonly<Record<string, string | boolean | undefined>>;

/** Options that every command takes. */
export const commonOptions = {
  content: { type: 'string', value: 'FOLDER', help: 'the content folder (or MIRRORLEAF_CONTENT)' },
  quiet: { type: 'boolean', help: 'say nothing but errors' },
  help: { type: 'boolean', help: 'show this' },
} as const satisfies Command['options'];

/** Run `main` with the parsed options and set the exit code from what it returns. */
export async function runCommand(
  command: Command,
  main: (given: Given, positionals: readonly string[]) => Promise<number>,
): Promise<void> {
  try {
    const options: ParseArgsOptionsConfig = Object.fromEntries(
      Object.entries(command.options).map(([name, { type }]) => [name, { type }]),
    );
    const { values, positionals } = parse(options, command.positionals !== undefined);
    if (values['help']) {
      console.log(helpText(command));
      return;
    }
    process.exitCode = await main(values, positionals);
  } catch (error) {
    if (!(error instanceof WrongUse)) throw error;
    console.error(`${error.message}\n\n${helpText(command)}`);
    process.exitCode = 2;
  }
}

function parse(options: ParseArgsOptionsConfig, allowPositionals: boolean) {
  try {
    const { values, positionals } = parseArgs({ options, allowPositionals, strict: true });
    return { values: values as Given, positionals };
  } catch (error) {
    throw new WrongUse((error as Error).message);
  }
}

export function helpText({ summary, example, options, positionals }: Command): string {
  const rows = Object.entries(options).map(([name, { value, help }]) => {
    return `  ${`--${name}${value ? ` ${value}` : ''}`.padEnd(22)}${help}`;
  });
  const what = positionals ? `\n\nPlates: ${positionals}` : '';
  return `${summary}${what}\n\n${rows.join('\n')}\n\nExample: ${example}`;
}

/** A whole number above 0, or undefined where the option was not given. */
export function countOption(given: Given, name: string): number | undefined {
  const value = given[name];
  if (value === undefined || value === 'auto') return undefined;
  const found = z.coerce.number().int().positive().safeParse(value);
  if (!found.success) {
    throw new WrongUse(
      `--${name} takes a whole number above 0 or "auto", but was given "${value}".`,
    );
  }
  return found.data;
}

/** `--share i/n` as the i-th of n parts. */
export function shareOption(given: Given): { part: number; of: number } | undefined {
  const value = given['share'];
  if (value === undefined) return undefined;
  const found = /^(\d+)\/(\d+)$/.exec(String(value));
  const [part, of] = [Number(found?.[1]), Number(found?.[2])];
  if (!found || part < 1 || part > of) {
    throw new WrongUse(`--share takes i/n with 1 ≤ i ≤ n, such as 2/8, but was given "${value}".`);
  }
  return { part, of };
}

export function textOption(given: Given, name: string): string | undefined {
  const value = given[name];
  return typeof value === 'string' ? value : undefined;
}
