/** What was recorded and measured of one capture, as lines of a term and its value. */
import type { CaptureResult, FileResult, Registration } from '../records/result.ts';
import type { CaptureRecord, LampRecord, SetupRecord } from '../records/sitting.ts';
import {
  bytes,
  degrees,
  figure,
  micrometres,
  millimetres,
  percent,
  pixels,
  pixelSize,
  shutter,
} from './measures.ts';
import { words } from './words.ts';

export type Fact = readonly [term: string, value: string];

const said = words.captures;
const joined = (parts: readonly (string | number | false | null | undefined)[]) =>
  parts.filter(Boolean).join(', ');

function facts(lines: readonly (readonly [string, string | null | undefined])[]): Fact[] {
  return lines.flatMap(([term, value]) => (value ? [[term, value] as const] : []));
}

function lampInWords(lamp: LampRecord): string {
  const { diffuser } = lamp;
  return joined([
    lamp.kind && lamp.kind.toUpperCase() === 'LED' ? 'LED' : lamp.kind,
    lamp.bearing !== undefined && said.bearing(degrees(lamp.bearing)),
    lamp.height !== undefined && said.height(degrees(lamp.height)),
    lamp.distance !== undefined && said.away(millimetres(lamp.distance)),
    lamp.size !== undefined && said.face(millimetres(lamp.size)),
    diffuser === true && said.diffuser,
    typeof diffuser === 'number' && said.diffuserOf(millimetres(diffuser)),
    lamp.polariser && said.polariser,
  ]);
}

export function setupFacts(setup: SetupRecord | null): Fact[] {
  if (!setup) return [];
  const { lamps, surround, glass, note } = setup;
  return facts([
    ...lamps.map((lamp) => [said.lamp, lampInWords(lamp)] as const),
    [said.surround, surround && said.surroundIs[surround]],
    [
      said.glass,
      glass &&
        said.glassIs(
          glass.index === undefined ? null : figure(glass.index),
          glass.thickness === undefined ? null : millimetres(glass.thickness),
          glass.angle === undefined ? null : degrees(glass.angle),
        ),
    ],
    [said.note, note],
  ]);
}

export function exposureInWords(
  file: FileResult | undefined,
  record: CaptureRecord | undefined,
): string {
  const seconds = record?.exposure?.seconds ?? file?.exif.seconds;
  const aperture = record?.exposure?.aperture ?? file?.exif.aperture;
  const iso = record?.exposure?.iso ?? file?.exif.iso;
  return joined([
    seconds && shutter(seconds),
    aperture && `f/${figure(aperture)}`,
    iso && `ISO ${iso}`,
  ]);
}

export function fileFacts(file: FileResult): Fact[] {
  return facts([
    [said.pixels, `${pixelSize(file.width, file.height)}, ${said.depth(file.depth)}`],
    [said.file, `${file.format.toUpperCase()}, ${bytes(file.bytes)}`],
    [said.profile, file.profile ?? said.noProfile],
    [said.luminance, said.luminanceOf(percent(file.meanLuminance))],
    [said.clipped, said.clippedOf(percent(file.clippedShare))],
  ]);
}

function bendInWords({ coefficient, radius }: { coefficient: number; radius: number }): string {
  return said.radialOf(pixels(Math.abs(coefficient * radius), 2));
}

export function registrationFacts(registration: Registration): Fact[] {
  switch (registration.state) {
    case 'base':
      return [[said.register, said.isBase]];
    case 'failed':
      return [[said.failed, registration.reason]];
    case 'not-measured':
      return [[said.notMeasured, registration.reason]];
    case 'registered': {
      const { boundPixels, boundMicrometres, tilesAgreed, tilesTried } = registration;
      const length = boundMicrometres === null ? null : micrometres(boundMicrometres, 2);
      return [
        [said.register, `${said.within(pixels(boundPixels, 2), length)}; ${said.withinNote}`],
        [said.method, `${registration.method}; ${said.agreed(tilesAgreed, tilesTried)}`],
        ...(registration.radial ? [[said.radial, bendInWords(registration.radial)] as const] : []),
        [said.lay, registration.lay],
        [said.tones, said.tonesAre[registration.polarity]],
      ];
    }
  }
}

/** How sure the register of the pair is, for the caption under the plate. */
export function pairBound(captures: readonly CaptureResult[], ids: readonly string[]) {
  const bounds = captures
    .filter(({ id }) => ids.includes(id))
    .flatMap(({ registration }) => (registration.state === 'registered' ? [registration] : []));
  if (bounds.length === 0) return null;
  return bounds.reduce((worst, one) => (one.boundPixels > worst.boundPixels ? one : worst));
}
