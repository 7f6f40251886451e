/** A plate's record against itself and against its captures. */
import type { Finding } from './finding.ts';
import { nearestWord } from './nearest-word.ts';
import { proposalWords, plateSizeNames, proposeSize } from './plate-sizes.ts';
import type { PlateRecord } from './plate.ts';
import { findingAt, repeated, type RecordAbout } from './record-about.ts';
import { toWrite } from './sitting-findings.ts';
import type { SittingRecord } from './sitting.ts';
import { placesToWrite } from './to-write.ts';

type Path = readonly PropertyKey[];

export function plateFindings(
  record: PlateRecord,
  sittings: readonly SittingRecord[],
  about: RecordAbout,
): Finding[] {
  const captures = sittings.flatMap((sitting) => sitting.captures.map((capture) => capture.id));
  return [
    ...twice(record, about),
    // A sitting that could not be read names no captures; what it would have named is unknown.
    ...(captures.length > 0 ? withheldUnknown(record, sittings, about) : []),
    ...(captures.length > 0 ? viewsUnknown(record, captures, about) : []),
    ...spotsUnknown(record, about),
    ...sizeFindings(record, about),
    ...processFindings(record, about),
    ...placesToWrite(record).map((path) => toWrite(path, about)),
    ...notRecorded(record, about),
  ];
}

function twice({ spots, looks }: PlateRecord, about: RecordAbout): Finding[] {
  const lists = [
    ['spots', spots],
    ['looks', looks],
  ] as const;
  return lists.flatMap(([name, entries]) => {
    const ids = entries.map((entry) => entry.id);
    return repeated(ids).map((k) =>
      findingAt(about, [name, k, 'id'], {
        level: 'error',
        code: 'duplicate-id',
        message: `There are two ${name} with the id "${ids[k]}".`,
        remedy: 'Give each an id of its own: links are made of them.',
      }),
    );
  });
}

function didYouMean(word: string, known: readonly string[]): string {
  const near = nearestWord(word, known);
  if (near) return `Did you mean "${near}"?`;
  return known.length > 0 ? `There are: ${known.join(', ')}.` : 'There are none.';
}

/** An error, not a warning: a slip of the pen here would publish what was to be withheld. */
function withheldUnknown(
  record: PlateRecord,
  sittings: readonly SittingRecord[],
  about: RecordAbout,
) {
  const captures = sittings.flatMap((sitting) => sitting.captures);
  const ids = captures.map(({ id }) => id);
  return record.withheld.flatMap((id, k) => {
    if (ids.includes(id)) return [];
    const owner = captures.find(({ frames = [] }) =>
      frames.some(({ file }) => file.replace(/\.[^.]+$/, '') === id),
    );
    return findingAt(about, ['withheld', k], {
      level: 'error',
      code: 'unknown-withheld',
      message: `"${id}" is to be withheld, but no capture has that id.`,
      // A picture made from the whole set would show what one of its frames was not to show.
      remedy: owner
        ? `It is a frame of "${owner.id}". A set is withheld as a whole: write "${owner.id}", or take the frame out of the set and make it a capture of its own.`
        : didYouMean(id, ids),
    });
  });
}

function viewsUnknown(record: PlateRecord, captures: readonly string[], about: RecordAbout) {
  const named: { id: string; path: Path; owner: string }[] = [
    ...record.spots.flatMap(({ id, view }, k) =>
      view === undefined
        ? []
        : [{ id: view, path: ['spots', k, 'view'], owner: `The spot "${id}"` }],
    ),
    ...record.looks.flatMap((look, k) =>
      look.steps.flatMap((step, n) =>
        step.of.map((id, m) => ({
          id,
          path: ['looks', k, 'steps', n, 'of', m],
          owner: `Step ${n + 1} of the guided look "${look.id}"`,
        })),
      ),
    ),
  ];
  return named.flatMap(({ id, path, owner }) =>
    captures.includes(id)
      ? []
      : findingAt(about, path, {
          level: 'warning',
          code: 'unknown-view',
          message: `${owner} shows "${id}", but no capture has that id.`,
          remedy: didYouMean(id, captures),
        }),
  );
}

function spotsUnknown({ looks, spots }: PlateRecord, about: RecordAbout): Finding[] {
  const known = spots.map((spot) => spot.id);
  return looks.flatMap((look, k) =>
    look.steps.flatMap(({ spot }, n) =>
      spot === undefined || known.includes(spot)
        ? []
        : findingAt(about, ['looks', k, 'steps', n, 'spot'], {
            level: 'warning',
            code: 'unknown-spot',
            message: `Step ${n + 1} of the guided look "${look.id}" goes to the spot "${spot}", which is not in "spots".`,
            remedy: didYouMean(spot, known),
          }),
    ),
  );
}

function sizeFindings({ size }: PlateRecord, about: RecordAbout): Finding[] {
  if (typeof size !== 'string' || placesToWrite(size).length > 0) return [];
  const proposal = proposeSize(size);
  if (proposal === null) {
    return [
      findingAt(about, ['size'], {
        level: 'warning',
        code: 'unknown-size',
        message: `No source that we know gives millimetres for the size "${size}".`,
        remedy: `Measure the plate and write [width, height], or use one of: ${plateSizeNames.join(', ')}.`,
      }),
    ];
  }
  return [
    findingAt(about, ['size'], {
      level: 'note',
      code: 'size-proposed',
      message: `The size is a name alone. It proposes: ${proposalWords(proposal)}.`,
      remedy:
        'Measure the plate and write [width, height] in millimetres: plates differ from their names.',
    }),
  ];
}

function processFindings({ process }: PlateRecord, about: RecordAbout): Finding[] {
  const other = process === 'other' || (typeof process !== 'string' && process.name === 'other');
  if (!other || (typeof process !== 'string' && process.text !== undefined)) return [];
  return [
    findingAt(about, ['process'], {
      level: 'warning',
      code: 'process-unnamed',
      message: 'The process is "other", and nothing says which.',
      remedy: 'Write { name: other, text: ... } with the process in words.',
    }),
  ];
}

/** One note for all that a reader will miss; none of it is needed to publish. */
function notRecorded(record: PlateRecord, about: RecordAbout): Finding[] {
  const wanted = {
    objectNumber: record.objectNumber,
    maker: record.maker.length > 0 ? record.maker : undefined,
    date: record.date,
    size: record.size,
    condition: record.condition.length > 0 ? record.condition : undefined,
  };
  const missing = Object.entries(wanted).flatMap(([key, value]) =>
    value === undefined ? [key] : [],
  );
  if (missing.length === 0) return [];
  return [
    findingAt(about, [], {
      level: 'note',
      code: 'not-recorded',
      message: `Nothing is recorded for: ${missing.join(', ')}.`,
      remedy: 'Add what is known.',
    }),
  ];
}
