import fc from 'fast-check';
import { z } from 'zod';
import { describe, expect, test } from 'vitest';
import { findingText } from '../../src/records/finding-text.ts';
import { plateSchema } from '../../src/records/plate.ts';
import { sittingSchema } from '../../src/records/sitting.ts';
import { readFrontMatter, readYaml } from '../../src/records/yaml-door.ts';

const good = `title: The inner basin
process: daguerreotype
description:
  positive: Boats.
  negative: Boats, tones reversed.
rights: http://rightsstatements.org/vocab/NKC/1.0/
`;

/** The sentences about a plate.md with these fields. */
function plateFaults(fields: string): string[] {
  const text = `---\n${fields}---\n\nThe text.\n`;
  const read = readFrontMatter({ plate: 'harbour', file: 'plate.md', text }, plateSchema);
  return read.ok ? [] : read.findings.map(findingText);
}

function sittingFaults(text: string): string[] {
  const read = readYaml({ plate: 'harbour', file: 'sitting.yaml', text }, sittingSchema);
  return read.ok ? [] : read.findings.map(findingText);
}

describe('a record that is right', () => {
  test('comes out parsed, with the line of its body and the places of its fields', () => {
    const text = `---\n${good}---\n\nThe text.\n`;
    const read = readFrontMatter({ plate: 'harbour', file: 'plate.md', text }, plateSchema);
    expect(read.ok && read.value.title).toBe('The inner basin');
    expect(read.ok && read.body).toBe('\nThe text.\n');
    expect(read.ok && read.bodyLine).toBe(9);
    expect(read.ok && read.placeOf(['description', 'negative'])).toEqual({ line: 6, column: 13 });
  });

  test('is read alike with CRLF line ends and a byte order mark', () => {
    const text = `\uFEFF---\n${good}date: 1852\n---\n\nThe text.\n`.replaceAll('\n', '\r\n');
    const read = readFrontMatter({ plate: 'harbour', file: 'plate.md', text }, plateSchema);
    expect(read.ok && read.value.date).toBe('1852');
    expect(read.ok && read.bodyLine).toBe(10);
    expect(read.ok && read.placeOf(['rights'])).toEqual({ line: 7, column: 9 });
  });

  test('may refer to one set-up from several captures', () => {
    const text = 'captures:\n  - &a { id: a, file: a.tif, setup: normal, reading: none }\n  - *a\n';
    const read = readYaml({ plate: 'harbour', file: 'sitting.yaml', text }, sittingSchema);
    expect(read.ok && read.value.captures).toHaveLength(2);
  });
});

describe('the sentence about', () => {
  test('an unknown field names the nearest known one and its line', () => {
    expect(plateFaults(`${good}procces: daguerreotype\n`)).toEqual([
      'plate "harbour", plate.md line 8, column 1: "procces" is not a known field. Did you mean "process"?',
    ]);
  });

  test('an unknown field inside a list names the entry and what is known there', () => {
    const text =
      'captures:\n  - id: normal\n    file: a.tif\n    setup: normal\n    reading: positive\n    wibble: 1\n';
    expect(sittingFaults(text)).toEqual([
      'plate "harbour", sitting.yaml line 6, column 5: "wibble" in entry 1 ("normal") of "captures" is not a known field. ' +
        'Fields known here: id, kind, file, frames, setup, reading, exposure, ball, ballWithin, overlap, blank, target, controlPoints, note.',
    ]);
  });

  test('a missing field says what belongs there', () => {
    expect(plateFaults(good.replace(/rights.*\n/, ''))).toEqual([
      'plate "harbour", plate.md line 2, column 1: "rights" is missing. Expected a RightsStatements.org or Creative Commons URI, such as "http://rightsstatements.org/vocab/NKC/1.0/". Add it.',
    ]);
  });

  test('a missing description of one reading points at the description', () => {
    expect(plateFaults(good.replace(/ {2}negative.*\n/, ''))).toEqual([
      'plate "harbour", plate.md line 5, column 3: "negative" in "description" is missing. Expected text. Add it.',
    ]);
  });

  test('a word that is not in a list names the nearest one that is', () => {
    expect(plateFaults(good.replace('daguerreotype', 'daguerrotype'))).toEqual([
      'plate "harbour", plate.md line 3, column 10: "process" is "daguerrotype". Expected one of "daguerreotype", "ambrotype", "tintype", "glass plate", "other". Did you mean "daguerreotype"?',
    ]);
  });

  test('a number where text belongs says how to write it, zeros kept', () => {
    expect(plateFaults(`${good}objectNumber: 0012\n`)).toEqual([
      'plate "harbour", plate.md line 8, column 15: "objectNumber" is the number 12. Expected text. If this is meant, put it in quotes: "0012".',
    ]);
  });

  test('a size with one length only is about the size, not about its alternatives', () => {
    expect(plateFaults(`${good}size: [70]\n`)).toEqual([
      'plate "harbour", plate.md line 8, column 7: "size" is a list. Expected a trade name, such as "sixth", or [width, height] in millimetres. Correct it, or take the field out if it may be left out.',
    ]);
  });

  test('a size of less than nothing is about that length', () => {
    expect(plateFaults(`${good}size: [70, -83]\n`)).toEqual([
      'plate "harbour", plate.md line 8, column 12: Entry 2 of "size" is the number -83. Expected a length in millimetres above 0. Correct it, or take the field out if it may be left out.',
    ]);
  });

  test('a date that is none gives forms to follow', () => {
    expect(plateFaults(`${good}date: ca. 1852\n`)).toEqual([
      'plate "harbour", plate.md line 8, column 7: "date" is "ca. 1852". Expected a date as EDTF, such as "1852", "1852~" (about), "185X" or "1849/1855". Correct it, or take the field out if it may be left out.',
    ]);
  });

  test('a capture outside its folder is refused', () => {
    const text =
      'captures:\n  - { id: a, file: ../../secret.tif, setup: normal, reading: positive }\n';
    expect(sittingFaults(text)).toEqual([
      'plate "harbour", sitting.yaml line 2, column 20: "file" in entry 1 ("a") of "captures" is "../../secret.tif". Expected the name of a file inside captures/, such as "normal.tif". Correct it, or take the field out if it may be left out.',
    ]);
  });

  test('a lamp below the plate names the lamp, the set-up and the limits', () => {
    const text =
      'setups:\n  side: { kind: normal, lamps: [{ bearing: 300, height: -5 }] }\n' +
      'captures:\n  - { id: a, file: a.tif, setup: side, reading: positive }\n';
    expect(sittingFaults(text)).toEqual([
      'plate "harbour", sitting.yaml line 2, column 57: "height" in entry 1 of "lamps" in "side" in "setups" is the number -5. Expected a height in degrees, from 0 to 90 above the plate. Correct it, or take the field out if it may be left out.',
    ]);
  });

  test('a set-up with a name that no address can hold says so at the name', () => {
    const text =
      'setups:\n  Side Lamp: { kind: normal }\ncaptures:\n  - { id: a, file: a.tif, setup: normal, reading: none }\n';
    expect(sittingFaults(text)).toEqual([
      'plate "harbour", sitting.yaml line 2, column 3: The name "Side Lamp" in "setups" cannot be used. Expected a name of lower-case letters, digits and single hyphens, such as "raking-left". Give it a name in that form.',
    ]);
  });

  test('a bracket without frames says which field is missing', () => {
    const text =
      'captures:\n  - { id: a, kind: bracket, file: a.tif, setup: normal, reading: none }\n';
    expect(sittingFaults(text)).toEqual([
      'plate "harbour", sitting.yaml line 2, column 5: Entry 1 ("a") of "captures" is a group of fields. Expected a "file" for a single capture, or "frames" for a bracket, lights or a mosaic. Correct it, or take the field out if it may be left out.',
    ]);
  });

  test('every fault is told, not the first alone', () => {
    expect(plateFaults('titel: x\nprocess: oil\n')).toHaveLength(5);
  });

  test.each([
    ['a tab', 'title: x\nhousing:\n\tcase: y\n', 'This line is indented with a tab.', 4],
    [
      'a field written twice',
      'title: x\ntitle: y\n',
      'The field "title" stands here a second time.',
      3,
    ],
    [
      'an open quotation mark',
      'title: "x\nplace: y\n',
      'A quotation mark is opened and never closed.',
      4,
    ],
    [
      'a colon in a value',
      'title: Harbour: boats\n',
      'There is a second colon in this line, or the next line is indented too far.',
      2,
    ],
    [
      'a line without a colon',
      'title: x\nplace\ndate: 1852\n',
      'This line, or the one before it, has no colon.',
      3,
    ],
    [
      'an asterisk',
      'title: *Harbour\n',
      '"*Harbour" is a reference to something that was never named with "&Harbour".',
      2,
    ],
    [
      'a percent sign',
      'title: %x\n',
      'A value cannot begin with this character unless it stands in quotes.',
      2,
    ],
    [
      'a tag',
      'title: !!js/function x\n',
      'A word that begins with "!" is a YAML tag, and no tag is known here.',
      2,
    ],
    [
      'brackets without end',
      `title: ${'['.repeat(20_000)}\n`,
      'Lists or fields are nested too deep to be read.',
      2,
    ],
  ])('%s', (_, fields, sentence, line) => {
    const text = `---\n${fields}---\n`;
    const read = readFrontMatter({ plate: 'harbour', file: 'plate.md', text }, plateSchema);
    const first = read.ok ? null : read.findings[0];
    expect(first?.message).toBe(sentence);
    expect(first?.line).toBe(line);
  });

  test('references that multiply is one sentence, in no time', () => {
    const level = (name: string, of: string) =>
      `${name}: &${name} [${Array(9).fill(`*${of}`).join(',')}]\n`;
    const names = [...'bcdefghij'];
    const bomb =
      'a: &a [x,x,x,x,x,x,x,x,x]\n' + names.map((name, k) => level(name, 'abcdefghij'[k])).join('');
    const read = readYaml({ plate: 'p', file: 'sitting.yaml', text: bomb }, sittingSchema);
    expect(read.ok ? [] : read.findings.map((f) => f.message)).toEqual([
      'References ("*name") to other references multiply this record beyond reading.',
    ]);
  });

  test('a file without front matter says how to begin one', () => {
    const read = readFrontMatter({ plate: 'p', file: 'plate.md', text: '# Hello\n' }, plateSchema);
    expect(read.ok ? [] : read.findings.map(findingText)).toEqual([
      'plate "p", plate.md line 1: The file does not begin with fields between two lines of three dashes. Begin it with a line "---", then the fields, then a line "---", then the text.',
    ]);
  });

  test.each([
    ['lists', `a: ${'['.repeat(5000)}${']'.repeat(5000)}`],
    ['fields', `a: ${'{a: '.repeat(5000)}1${'}'.repeat(5000)}`],
    ['entries', `${'- '.repeat(50_000)}x`],
  ])('%s in one another, thousands of times, are one sentence', (_, text) => {
    const read = readYaml({ plate: 'p', file: 'sitting.yaml', text }, sittingSchema);
    expect(read.ok ? [] : read.findings.map((f) => f.message)).toEqual([
      'Lists or fields are nested too deep to be read.',
    ]);
  });

  test.each([
    ['quotations', `${'>'.repeat(10_000)} x`],
    ['lists', `Text.\n\n${'- '.repeat(3000)}x`],
    ['numbers', `${'1. '.repeat(3000)}x`],
    ['directives', ':::look[x]\n'.repeat(1000)],
  ])(
    'a text with %s in one another, thousands of times, is one sentence with its line',
    (name, body) => {
      const text = `---\ntitle: Deep\n---\n\n${body}\n`;
      const read = readFrontMatter({ plate: '', file: 'lessons/deep.md', text }, z.unknown());
      const line = { lists: 7, directives: 55 }[name] ?? 5;
      expect(read.ok ? [] : read.findings.map((f) => [f.code, f.line])).toEqual([
        ['too-deep', line],
      ]);
    },
  );

  test('a text with rules, lists in lists and closed directives is not too deep', () => {
    const body = `---\n\n${'- - - -\n\n:::look[x]\ntext\n:::\n\n> > - 1. x\n'.repeat(80)}`;
    const text = `---\ntitle: Plain\n---\n\n${body}`;
    expect(readFrontMatter({ plate: '', file: 'a.md', text }, z.unknown()).ok).toBe(true);
  });

  test('a record of millions of characters is its length', () => {
    const text = `title: "${'x'.repeat(2_000_000)}"\n`;
    const read = readYaml({ plate: 'p', file: 'sitting.yaml', text }, sittingSchema);
    expect(read.ok ? '' : read.findings[0].code).toBe('too-long');
  });
});

describe('whatever is written in a record', () => {
  const piece = fc.constantFrom(
    ...['captures', 'id', 'file', 'setup', 'title', '__proto__', 'constructor', '<<'],
    ...[':', ': ', '- ', '\n', '  ', '\t', '"', "'", '[', ']', '{', '}', '&a', '*a', '|', '>', '#'],
    ...['---\n', '...', '!', '%', '@', '\r\n', '\uFEFF', '1852', '-1', 'é', '\0', '? '],
  );
  const text = fc.array(piece, { maxLength: 60 }).map((pieces) => pieces.join(''));

  test('the door answers with a record or with findings whose lines are in the file', () => {
    fc.assert(
      fc.property(text, (body) => {
        for (const schema of [plateSchema, sittingSchema]) {
          const read = readYaml({ plate: 'p', file: 'f.yaml', text: body }, schema);
          if (read.ok) continue;
          expect(read.findings.length).toBeGreaterThan(0);
          for (const { line, message, remedy } of read.findings) {
            expect(line).toBeLessThanOrEqual(body.split('\n').length);
            expect(message).not.toMatch(/undefined|NaN|\[object|invalid_|Invalid input/);
            expect(remedy).toMatch(/[.?]$/);
          }
        }
      }),
      { numRuns: 1500 },
    );
  });

  test('one changed byte of a good record never crashes the door', () => {
    fc.assert(
      fc.property(fc.nat(good.length - 1), fc.integer({ min: 0, max: 255 }), (at, code) => {
        const text = good.slice(0, at) + String.fromCharCode(code) + good.slice(at + 1);
        expect(() => plateFaults(text)).not.toThrow();
      }),
      { numRuns: 1500 },
    );
  });
});
