/**
 * What can be wrong with a file before any stage sees its pixels, as a value: a stable word for
 * programs, a sentence for the person, and what to do.
 */

export const captureFaultCodes = [
  'file-missing',
  'file-unreadable',
  'file-empty',
  'file-type',
  'file-misnamed',
  'file-damaged',
  'camera-raw',
  'colour-space',
  'pixel-format',
  'several-pages',
  'transparent',
  'over-pixel-limit',
  'disk-full',
] as const;
export type CaptureFaultCode = (typeof captureFaultCodes)[number];

/** The failure value that `readCapture` gives. */
export interface CaptureFailure {
  readonly ok: false;
  readonly code: CaptureFaultCode;
  /** What was found and what was expected. */
  readonly message: string;
  /** What to do next. */
  readonly remedy: string;
}

/** The same, thrown from the depth of a reader to the door. */
export class CaptureFault extends Error {
  readonly code: CaptureFaultCode;
  readonly remedy: string;

  constructor(code: CaptureFaultCode, message: string, remedy: string) {
    super(message);
    this.name = 'CaptureFault';
    this.code = code;
    this.remedy = remedy;
  }
}

/** A fault as a value; anything else is a mistake of ours and is thrown on. */
export function asFailure(error: unknown): CaptureFailure {
  if (!(error instanceof CaptureFault)) throw error;
  return { ok: false, code: error.code, message: error.message, remedy: error.remedy };
}

/** The refusal of a sensor's own data, which has no tones or colours before it is developed. */
export function cameraRaw(name: string): CaptureFault {
  return new CaptureFault(
    'camera-raw',
    `${name} holds a camera's raw data, which has to be developed before it is a picture.`,
    'Develop it with the same fixed settings for the whole sitting and export a 16-bit TIFF.',
  );
}

/** What libvips and the system say when it is the writing that failed; often without the reason. */
const full = /No space left|File too large|quota exceeded/i;
const writing = /write failed|write error|unable to write/i;

/** The fault for a picture that could not be written, whatever was being read; null for others. */
export function diskFull(name: string, error: unknown): CaptureFault | null {
  const said = error instanceof Error ? error.message : String(error);
  if (!full.test(said) && !writing.test(said)) return null;
  const what = full.test(said) ? 'full' : 'full, or failed,';
  return new CaptureFault(
    'disk-full',
    `The disk of the cache folder was ${what} while ${name} was worked on.`,
    'Make room or set MIRRORLEAF_CACHE to a folder on a larger disk, then build again.',
  );
}

/** The fault for a file that libvips gives up on. */
export function damaged(name: string, error: unknown): CaptureFault {
  const full = diskFull(name, error);
  if (full) return full;
  const said = error instanceof Error ? error.message : String(error);
  const reason = said
    .split('\n')[0]
    .replace(/^Input file (has corrupt header: )?/, '')
    .replace(/(\/[^/\s:]+)+\//g, '')
    .replace(/^Warning treated as error.*/, 'the decoder warned about its structure')
    .slice(0, 200);
  if (/not configured|can not handle|not implemented|Unsupported/.test(reason)) {
    return new CaptureFault(
      'pixel-format',
      `${name} is packed in a way that cannot be read here (${reason}).`,
      'Export the capture again as an uncompressed or LZW-packed TIFF.',
    );
  }
  return new CaptureFault(
    'file-damaged',
    `${name} cannot be decoded to its last pixel (${reason}).`,
    'Copy the file again from the camera or the archive and compare checksums; if it stays so, export it again.',
  );
}
