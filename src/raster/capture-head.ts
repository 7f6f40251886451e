/**
 * What a capture file is, before its pixels are read: format, size, channels, profile. Whatever
 * cannot be read faithfully is refused here with a reason, so that every later step may trust
 * what it gets.
 */
import { open, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { openBytes } from './byte-reader.ts';
import { cameraRaw, CaptureFault, damaged } from './capture-fault.ts';
import { fileKind, wantedEnding, type CaptureFormat } from './file-kind.ts';
import { sharp, type Metadata } from './libvips.ts';
import { profileFits } from './matrix-profile.ts';
import { checkTiff } from './tiff-check.ts';
import { readDirectories, type TiffDirectory } from './tiff-directory.ts';
import { plainLayout, type TiffLayout } from './tiff-rows.ts';

/**
 * Pixels of the largest picture that is opened unless the caller says otherwise: above the
 * largest plate scan met so far (900 megapixels), below what a small file can swell to.
 */
export const defaultPixelLimit = 1_200_000_000;

export interface CaptureHead {
  readonly path: string;
  readonly name: string;
  readonly bytes: number;
  readonly format: CaptureFormat;
  /** After the orientation has been applied. */
  readonly width: number;
  readonly height: number;
  /** Alpha not counted. */
  readonly channels: 1 | 3;
  readonly hasAlpha: boolean;
  readonly depth: 8 | 16;
  /** The EXIF orientation, 1 to 8. */
  readonly orientation: number;
  /** The embedded colour profile; null also when it is damaged or of another kind of picture. */
  readonly profile: Buffer | null;
  /** Where the samples lie, when nothing needs to be decoded. */
  readonly layout: TiffLayout | null;
  /** First directory of a TIFF file. */
  readonly directory: TiffDirectory | null;
  /** EXIF block of the other formats, from `II` or `MM` on. */
  readonly exif: Buffer | null;
}

/**
 * Look at a file and refuse what is not a capture.
 *
 * @throws CaptureFault
 */
export async function readHead(path: string, pixelLimit: number): Promise<CaptureHead> {
  const name = basename(path);
  const { size, format } = await identify(path, name);
  const directories = format === 'tiff' ? await tiffDirectories(path) : null;
  const directory = directories?.[0] ?? null;
  if (directories) checkTiff(directories, name);

  const found = await metadata(path, name);
  const { width, height } = found.autoOrient;
  const pixels = width * height;
  if (pixels > pixelLimit) {
    throw new CaptureFault(
      'over-pixel-limit',
      `${name} is ${width} x ${height} pixels, ${millions(pixels)} megapixels; the limit is ${millions(pixelLimit)}.`,
      'If the picture is meant to be that large, raise the pixel limit; otherwise look at the file before opening it.',
    );
  }
  if ((found.pages ?? 1) > 1 && format !== 'tiff') {
    throw new CaptureFault(
      'several-pages',
      `${name} holds ${found.pages} pictures; a capture is one.`,
      'Save the picture that is meant as a file of its own.',
    );
  }
  const { channels, depth } = sampleKind(found, name);
  const hasAlpha = found.hasAlpha;
  const orientation = found.orientation ?? 1;
  const layout = directory && !hasAlpha && orientation === 1 ? plainLayout(directory) : null;
  return {
    path,
    name,
    bytes: size,
    format,
    width,
    height,
    channels,
    hasAlpha,
    depth,
    orientation,
    profile: found.icc && profileFits(found.icc, channels) ? found.icc : null,
    layout,
    directory,
    exif: exifBlock(found.exif),
  };
}

const millions = (pixels: number): string => (pixels / 1e6).toFixed(pixels < 1e7 ? 2 : 0);

async function identify(
  path: string,
  name: string,
): Promise<{ size: number; format: CaptureFormat }> {
  let head: Buffer;
  let size: number;
  try {
    const about = await stat(path);
    if (!about.isFile()) {
      throw new CaptureFault(
        'file-unreadable',
        `${name} is a folder or a device; a capture is a file.`,
        'Name the file itself in the sitting.',
      );
    }
    size = about.size;
    const handle = await open(path);
    try {
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(32), 0, 32, 0);
      head = buffer.subarray(0, bytesRead);
    } finally {
      await handle.close();
    }
  } catch (error) {
    throw error instanceof CaptureFault ? error : unopened(error, name);
  }
  if (size === 0) {
    throw new CaptureFault(
      'file-empty',
      `${name} is empty: 0 bytes.`,
      'Copy the file again from the camera or the archive.',
    );
  }
  const kind = fileKind(head, name);
  if ('other' in kind) {
    throw new CaptureFault(
      'file-type',
      `${name} is ${kind.other}, judged by its first bytes; a capture is a TIFF, JPEG, PNG or WebP file.`,
      'Export the capture as a 16-bit TIFF, or take the file out of the sitting if it is none.',
    );
  }
  if ('raw' in kind) throw cameraRaw(name);
  const wanted = wantedEnding(kind.format, name);
  if (wanted !== null) {
    throw new CaptureFault(
      'file-misnamed',
      `${name} is a ${kind.format.toUpperCase()} file by its content, which its name does not say.`,
      `Find out which of the two is right; if it is the content, let the name end in ${wanted}.`,
    );
  }
  return { size, format: kind.format };
}

function unopened(error: unknown, name: string): CaptureFault {
  const code = (error as NodeJS.ErrnoException).code ?? 'unknown';
  return code === 'ENOENT' || code === 'ENOTDIR'
    ? new CaptureFault(
        'file-missing',
        `${name} is not in the captures folder.`,
        'Put the file there, or correct its name in the sitting.',
      )
    : new CaptureFault(
        'file-unreadable',
        `${name} cannot be opened (${code}).`,
        'Check the rights of the file and the disk that it lies on.',
      );
}

async function tiffDirectories(path: string): Promise<TiffDirectory[]> {
  const file = await openBytes(path);
  try {
    return (await readDirectories(file)) ?? [];
  } finally {
    await file.close();
  }
}

async function metadata(path: string, name: string): Promise<Metadata> {
  try {
    return await sharp(path, { limitInputPixels: false }).metadata();
  } catch (error) {
    throw damaged(name, error);
  }
}

function sampleKind(found: Metadata, name: string): { channels: 1 | 3; depth: 8 | 16 } {
  const kinds: Readonly<Record<string, { channels: 1 | 3 } | undefined>> = {
    srgb: { channels: 3 },
    rgb: { channels: 3 },
    rgb16: { channels: 3 },
    'b-w': { channels: 1 },
    grey16: { channels: 1 },
  };
  const kind = kinds[found.space];
  if (!kind) {
    throw new CaptureFault(
      'colour-space',
      `${name} holds ${found.space.toUpperCase()} numbers; a capture is grey or RGB.`,
      'Export the capture from its master as RGB, with the working profile embedded.',
    );
  }
  const depth = found.depth === 'uchar' ? 8 : found.depth === 'ushort' ? 16 : null;
  const bits = found.bitsPerSample ?? depth ?? 0;
  if (depth === null || bits < 8 || found.isPalette) {
    throw new CaptureFault(
      'pixel-format',
      `${name} has ${found.isPalette ? 'a palette of colours' : `${bits || found.depth} bits per sample (${found.depth})`}; a capture has 8 or 16 bits, unsigned.`,
      'Export the capture again as a 16-bit (or 8-bit) TIFF.',
    );
  }
  const wanted = kind.channels + (found.hasAlpha ? 1 : 0);
  if (found.channels !== wanted) {
    throw new CaptureFault(
      'pixel-format',
      `${name} has ${found.channels} channels; a capture has 1 (grey) or 3 (RGB).`,
      'Export the capture again as grey or RGB without extra channels.',
    );
  }
  return { channels: kind.channels, depth };
}

/** sharp gives the EXIF block with or without its six-byte opening. */
function exifBlock(block: Buffer | undefined): Buffer | null {
  if (!block || block.length < 14) return null;
  return block.toString('latin1', 0, 4) === 'Exif' ? block.subarray(6) : block;
}
