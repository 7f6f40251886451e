/** What was recorded and measured of one capture, as lines of a term and its value. */
import type { CaptureResult, FileResult, Registration } from '../records/result.ts';
import type { CaptureRecord, LampRecord, SetupRecord } from '../records/sitting.ts';
import { saidParts } from './label-words.ts';
import type { Said, Speech } from './speech.ts';

export type Fact = readonly [term: string, value: string | readonly Said[]];

/** What the lines are said in. */
type Saying = Pick<Speech, 'words' | 'measures' | 'original' | 'recorded'>;

const joined = (parts: readonly (string | number | false | null | undefined)[]) =>
  parts.filter(Boolean).join(', ');

type Line = readonly [string, string | readonly Said[] | null | undefined];
function facts(lines: readonly Line[]): Fact[] {
  return lines.flatMap(([term, value]) =>
    value && value.length > 0 ? [[term, value] as const] : [],
  );
}

function lampInWords(lamp: LampRecord, { words, measures, original }: Saying): Said[] {
  const said = words.captures;
  const { diffuser } = lamp;
  return saidParts([
    lamp.kind?.toUpperCase() === 'LED' ? 'LED' : lamp.kind && { text: lamp.kind, lang: original },
    lamp.bearing !== undefined && said.bearing(measures.degrees(lamp.bearing)),
    lamp.height !== undefined && said.height(measures.degrees(lamp.height)),
    lamp.distance !== undefined && said.away(measures.millimetres(lamp.distance)),
    lamp.size !== undefined && said.face(measures.millimetres(lamp.size)),
    diffuser === true && said.diffuser,
    typeof diffuser === 'number' && said.diffuserOf(measures.millimetres(diffuser)),
    lamp.polariser && said.polariser,
  ]);
}

export function setupFacts(setup: SetupRecord | null, saying: Saying): Fact[] {
  const { words, measures } = saying;
  const said = words.captures;
  if (!setup) return [];
  const { lamps, surround, glass, note } = setup;
  return facts([
    ...lamps.map((lamp) => [said.lamp, lampInWords(lamp, saying)] as const),
    [said.surround, surround && said.surroundIs[surround]],
    [
      said.glass,
      glass &&
        said.glassIs(
          glass.index === undefined ? null : measures.figure(glass.index),
          glass.thickness === undefined ? null : measures.millimetres(glass.thickness),
          glass.angle === undefined ? null : measures.degrees(glass.angle),
        ),
    ],
    [said.note, note && [{ text: note, lang: saying.original }]],
  ]);
}

export function exposureInWords(
  file: FileResult | undefined,
  record: CaptureRecord | undefined,
  { measures }: Saying,
): string {
  const seconds = record?.exposure?.seconds ?? file?.exif.seconds;
  const aperture = record?.exposure?.aperture ?? file?.exif.aperture;
  const iso = record?.exposure?.iso ?? file?.exif.iso;
  return joined([
    seconds && measures.shutter(seconds),
    aperture && `f/${measures.figure(aperture)}`,
    iso && `ISO ${iso}`,
  ]);
}

export function fileFacts(file: FileResult, { words, measures, recorded }: Saying): Fact[] {
  const said = words.captures;
  return facts([
    [said.pixels, `${measures.pixelSize(file.width, file.height)}, ${said.depth(file.depth)}`],
    [said.file, `${file.format.toUpperCase()}, ${measures.bytes(file.bytes)}`],
    [said.profile, file.profile === null ? said.noProfile : [recorded(file.profile)]],
    [said.luminance, said.luminanceOf(measures.percent(file.meanLuminance))],
    [said.clipped, said.clippedOf(measures.percent(file.clippedShare))],
  ]);
}

function bendInWords(
  { coefficient, radius }: { coefficient: number; radius: number },
  { words, measures }: Saying,
): string {
  return words.captures.radialOf(measures.pixels(Math.abs(coefficient * radius), 2));
}

export function registrationFacts(registration: Registration, saying: Saying): Fact[] {
  const { words, measures, recorded } = saying;
  const said = words.captures;
  switch (registration.state) {
    case 'base':
      return [[said.register, said.isBase]];
    case 'failed':
      return [[said.failed, [recorded(registration.reason)]]];
    case 'not-measured':
      return [[said.notMeasured, [recorded(registration.reason)]]];
    case 'registered': {
      const { boundPixels, boundMicrometres, tilesAgreed, tilesTried } = registration;
      const length = boundMicrometres === null ? null : measures.micrometres(boundMicrometres, 2);
      return [
        [
          said.register,
          `${said.within(measures.pixels(boundPixels, 2), length)}; ${said.withinNote}`,
        ],
        [
          said.method,
          [recorded(registration.method), { text: said.agreed(tilesAgreed, tilesTried) }],
        ],
        ...(registration.radial
          ? [[said.radial, bendInWords(registration.radial, saying)] as const]
          : []),
        [said.lay, said.lays[registration.lay]],
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
