/** Reading named spans of a file that may end too early: every short read is a fault, said once. */
import { open, type FileHandle } from 'node:fs/promises';
import { basename } from 'node:path';
import { CaptureFault } from './capture-fault.ts';

export interface ByteReader {
  readonly size: number;
  /** Fill the first `length` bytes of `into` from `position` of the file. */
  fill(into: Buffer, length: number, position: number): Promise<void>;
  /** A new buffer of `length` bytes from `position` of the file. */
  read(length: number, position: number): Promise<Buffer>;
  close(): Promise<void>;
}

/** Open a file for positioned reads. Faults name the file by its last part. */
export async function openBytes(path: string): Promise<ByteReader> {
  const handle: FileHandle = await open(path);
  const { size } = await handle.stat();
  const name = basename(path);

  async function fill(into: Buffer, length: number, position: number): Promise<void> {
    if (position + length > size) throw cutShort(name, position + length, size);
    let done = 0;
    while (done < length) {
      const { bytesRead } = await handle.read(into, done, length - done, position + done);
      if (bytesRead === 0) throw cutShort(name, position + length, position + done);
      done += bytesRead;
    }
  }
  return {
    size,
    fill,
    async read(length, position) {
      if (position + length > size) throw cutShort(name, position + length, size);
      const into = Buffer.from(new ArrayBuffer(length));
      await fill(into, length, position);
      return into;
    },
    close: () => handle.close(),
  };
}

function cutShort(name: string, expected: number, found: number): CaptureFault {
  return new CaptureFault(
    'file-damaged',
    `${name} ends too early: its own directory speaks of byte ${expected}, but the file has ${found} bytes.`,
    'Copy the file again from the camera or the archive and compare checksums.',
  );
}
