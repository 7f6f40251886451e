/**
 * Work that begins strictly in the order in which it was asked for, a few pieces at the same
 * time: what a pool of threads is given all at once it begins in an order of its own (measured).
 */

/** Begins a piece of work when its turn has come; gives what it gives. */
export type Turns = <T>(work: () => Promise<T>) => Promise<T>;

export function takeTurns(width: number): Turns {
  const waiting: (() => void)[] = [];
  let free = width;
  return async (work) => {
    if (free > 0) free -= 1;
    else {
      await new Promise<void>((resolve) => {
        waiting.push(resolve);
      });
    }
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      if (next) next();
      else free += 1;
    }
  };
}
