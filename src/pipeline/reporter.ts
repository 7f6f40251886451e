/** Progress for a person: one line that moves on a terminal, plain lines elsewhere. */

export interface Reporter {
  /** Say something that stays. */
  line(text: string): void;
  /** Say how far a task is; replaced by the next one on a terminal. */
  step(label: string, done: number, total: number): void;
}

/** Milliseconds between two plain lines of the same task, so that a log stays readable. */
const plainInterval = 10_000;

export function createReporter(
  stream: NodeJS.WriteStream = process.stderr,
  options: { quiet?: boolean; env?: NodeJS.ProcessEnv } = {},
): Reporter {
  const env = options.env ?? process.env;
  if (options.quiet) return { line: () => undefined, step: () => undefined };
  const live = stream.isTTY && !env['CI'] && env['TERM'] !== 'dumb';
  let shown = false;
  let last = 0;

  function wipe(): void {
    if (!shown) return;
    stream.clearLine(0);
    stream.cursorTo(0);
    shown = false;
  }

  return {
    line(text) {
      wipe();
      stream.write(`${text}\n`);
    },
    step(label, done, total) {
      const now = performance.now();
      const end = done === total;
      if (live) {
        if (now - last < 80 && !end) return;
        last = now;
        wipe();
        // A pseudo-terminal may report 0 columns.
        stream.write(`${label} ${done}/${total}`.slice(0, (stream.columns || 80) - 1));
        shown = true;
        if (end) wipe();
      } else if (now - last > plainInterval) {
        last = now;
        stream.write(`${label} ${done}/${total}\n`);
      }
    },
  };
}
