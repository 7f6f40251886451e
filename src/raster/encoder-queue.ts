/** Pictures to files, a few at a time on libuv's threads, their buffers used again. */
import type { PictureSink } from './picture-sink.ts';

/** Pictures being encoded at once: enough to keep the threads busy, few enough to hold. */
const inFlight = 8;

/** @param encode Writes one picture; it has the buffer to itself until it resolves. */
export function encoderQueue(
  encode: (address: string, data: Uint8Array, width: number, height: number) => Promise<unknown>,
): PictureSink {
  const free = new Map<number, Uint8Array[]>();
  const flying = new Set<Promise<void>>();

  async function write(
    address: string,
    data: Uint8Array,
    width: number,
    height: number,
  ): Promise<void> {
    await encode(address, data, width, height);
    const list = free.get(data.length) ?? [];
    list.push(data);
    free.set(data.length, list);
  }

  return {
    room: (bytes) => free.get(bytes)?.pop() ?? new Uint8Array(bytes),
    take(address, data, width, height) {
      const job: Promise<void> = write(address, data, width, height).finally(() =>
        flying.delete(job),
      );
      job.catch(() => undefined); // reported by ready() or finish()
      flying.add(job);
    },
    get full() {
      return flying.size > inFlight;
    },
    async ready() {
      while (flying.size > inFlight) await Promise.race(flying);
    },
    async finish() {
      await Promise.all(flying);
    },
  };
}
