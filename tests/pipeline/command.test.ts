import { describe, expect, test } from 'vitest';
import { countOption, helpText, shareOption } from '../../src/pipeline/command.ts';
import { createReporter } from '../../src/pipeline/reporter.ts';

describe('shareOption', () => {
  test('takes the second of eight', () => {
    expect(shareOption({ share: '2/8' })).toEqual({ part: 2, of: 8 });
  });

  test.each(['0/4', '5/4', '1', 'a/b', '1/4/2', '-1/4'])('refuses %s and says why', (share) => {
    expect(() => shareOption({ share })).toThrow(
      `--share takes i/n with 1 ≤ i ≤ n, such as 2/8, but was given "${share}".`,
    );
  });
});

describe('countOption', () => {
  test('leaves "auto" and silence to the program', () => {
    expect(countOption({ jobs: 'auto' }, 'jobs')).toBeUndefined();
    expect(countOption({}, 'jobs')).toBeUndefined();
  });

  test.each(['0', '-2', '1.5', 'many'])('refuses %s', (jobs) => {
    expect(() => countOption({ jobs }, 'jobs')).toThrow(
      `--jobs takes a whole number above 0 or "auto", but was given "${jobs}".`,
    );
  });
});

test('help shows every option with its value, and an example', () => {
  const text = helpText({
    summary: 'Does a thing.',
    example: 'npm run thing -- --content there',
    options: { content: { type: 'string', value: 'FOLDER', help: 'the content folder' } },
  });
  expect(text).toBe(
    'Does a thing.\n\n  --content FOLDER      the content folder\n\nExample: npm run thing -- --content there',
  );
});

describe('createReporter', () => {
  const listen = (tty: boolean, env: NodeJS.ProcessEnv, quiet = false) => {
    const said: string[] = [];
    const stream = {
      isTTY: tty,
      columns: 0,
      write: (text: string) => said.push(text),
      clearLine: () => true,
      cursorTo: () => true,
    } as unknown as NodeJS.WriteStream;
    return { said, reporter: createReporter(stream, { env, quiet }) };
  };

  test('writes plain lines, and no control codes, where there is no terminal', () => {
    const { said, reporter } = listen(false, {});
    reporter.line('plate done');
    expect(said).toEqual(['plate done\n']);
  });

  test('shows a step at once on a terminal, even one that reports no width', () => {
    const { said, reporter } = listen(true, {});
    reporter.step('tiles', 1, 3);
    expect(said).toEqual(['tiles 1/3']);
  });

  test('says nothing when asked to be quiet', () => {
    const { said, reporter } = listen(true, {}, true);
    reporter.line('plate done');
    reporter.step('tiles', 1, 3);
    expect(said).toEqual([]);
  });
});
