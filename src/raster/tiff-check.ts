/**
 * Kinds of TIFF that are refused although libvips may show something: what it shows would not be
 * the numbers in the file.
 *
 * References
 * - TIFF Revision 6.0, section 8: BitsPerSample, Compression, NewSubfileType,
 *   PhotometricInterpretation, SampleFormat.
 * - Adobe DNG Specification 1.4: DNGVersion, photometric values 32803 and 34892.
 */
import { cameraRaw, CaptureFault } from './capture-fault.ts';
import { numbersOf, type TiffDirectory } from './tiff-directory.ts';

const photometrics: Readonly<Record<number, string>> = {
  3: 'colours from a palette',
  4: 'a transparency mask',
  5: 'CMYK inks',
  8: 'CIELAB values',
  9: 'ICC LAB values',
  10: 'ITU LAB values',
};

/** @throws CaptureFault for a TIFF that is not one picture of unsigned 8- or 16-bit samples. */
export function checkTiff(directories: readonly TiffDirectory[], name: string): void {
  const [first] = directories;
  if (first === undefined) return;
  const one = (tag: number): number | undefined => numbersOf(first, tag)[0];
  const photometric = one(262) ?? -1;
  if (first.entries.has(50706) || photometric === 32803 || photometric === 34892) {
    throw cameraRaw(name);
  }
  const inks = photometrics[photometric];
  if (inks !== undefined) {
    throw new CaptureFault(
      photometric === 3 ? 'pixel-format' : 'colour-space',
      `${name} holds ${inks}; a capture is grey or RGB.`,
      'Export the capture from its master as RGB, with the working profile embedded.',
    );
  }
  const bits = [...new Set(numbersOf(first, 258))];
  const kind = one(339) ?? 1;
  if (kind !== 1 || bits.length !== 1 || (bits[0] !== 8 && bits[0] !== 16)) {
    const words = ['', 'unsigned', 'signed', 'floating-point'][kind] ?? 'unusual';
    throw new CaptureFault(
      'pixel-format',
      `${name} has ${words} samples of ${bits.join(', ') || '1'} bits; a capture has 8 or 16 bits, unsigned.`,
      'Export the capture again as a 16-bit (or 8-bit) TIFF.',
    );
  }
  const pages = directories.filter((d) => ((numbersOf(d, 254)[0] ?? 0) & 1) === 0).length;
  if (pages > 1) {
    throw new CaptureFault(
      'several-pages',
      `${name} holds ${pages} pictures; a capture is one.`,
      'Save the picture that is meant as a file of its own.',
    );
  }
}
