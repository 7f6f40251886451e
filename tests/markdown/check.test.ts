import { describe, expect, test } from 'vitest';
import { faults } from './harbour.ts';

const at = (line: number, column: number, file = 'plate "harbour", plate.md') =>
  `${file} line ${line}, column ${column}: `;

describe('the check of a text says', () => {
  test('nothing about a text that is right', async () => {
    const text =
      'At 10:30 see :plate[it]{slug=harbour}, [left](/lessons/left-is-right/), ' +
      '[the masts](/plates/harbour/#spot-masts) and [away](https://example.org/).\n\n' +
      '<!-- a word to ourselves -->\n\n::spot[x]{id=masts}\n\n' +
      '## Provenance\n\n- 1850-05: Made.\n- 1850/1911: The family.\n- 1900: Lent.\n';
    expect(await faults(text)).toEqual([]);
  });

  test('which plate a link may have meant, with the line of the file', async () => {
    expect(await faults('One.\n\nTwo [x](/plates/harbor/).')).toEqual([
      `${at(13, 5)}The link "/plates/harbor/" leads to the plate "harbor", but there is no such plate. Did you mean "harbour"?`,
    ]);
  });

  test('that a link from one plate to its neighbour is resolved as a browser does', async () => {
    expect(await faults('[x](../harbour/) [y](../nowhere/)')).toEqual([
      `${at(11, 18)}The link "../nowhere/" leads to the plate "nowhere", but there is no such plate. Correct the link.`,
    ]);
  });

  test('that a spot or a look in a link is not there', async () => {
    expect(await faults('[x](/plates/harbour/#spot-mats) [y](#look-rond)')).toEqual([
      `${at(11, 1)}The link "/plates/harbour/#spot-mats" leads to "mats", which is not among the spots of "harbour". Did you mean "masts"?`,
      `${at(11, 33)}The link "#look-rond" leads to "rond", which is not among the looks of "harbour". Did you mean "round"?`,
    ]);
  });

  test('that a link is no address', async () => {
    expect(await faults('[x](/%E0%A4%A)')).toEqual([
      `${at(11, 1)}The link "/%E0%A4%A" is not an address. Correct it.`,
    ]);
  });

  test('that a page is not there', async () => {
    expect(await faults('[x](/lessons/left-is-wrong/)', 'glossary.md')).toEqual([
      `${at(11, 1, 'glossary.md')}The link "/lessons/left-is-wrong/" leads to no page of the exhibit. Did you mean "/lessons/left-is-right/"?`,
    ]);
  });

  test('which spot a directive may have meant', async () => {
    expect(await faults('::spot[x]{id=mast}')).toEqual([
      `${at(11, 1)}"::spot" is about "mast", which is not among the spots of the plate "The harbour". Did you mean "masts"?`,
    ]);
  });

  test('that a directive of a lesson must name its plate', async () => {
    expect(await faults('::spot[x]{id=masts}', 'lessons/a.md')).toEqual([
      `${at(11, 1, 'lessons/a.md')}"::spot" does not say which plate it is about. Add {plate=...} with the name of the plate's folder.`,
    ]);
  });

  test('that a directive is none of ours when it is meant as one', async () => {
    expect(await faults(':::spots[x]\n:::')).toEqual([
      `${at(11, 1)}":::spots" is no directive of ours and stays in the text as it is written. Did you mean "::spot"?`,
    ]);
  });

  test('that the viewer has no such mode', async () => {
    expect(await faults(':show[x]{view=tild}')).toEqual([
      `${at(11, 1)}":show" asks for the view "tild". Expected one of look, slide, beside, tilt, lamp, range. Did you mean "tilt"?`,
    ]);
  });

  test('what is left out of the page', async () => {
    expect(await faults('<b onclick="x">\n\n[x](javascript:alert(1))')).toEqual([
      `${at(11, 1)}HTML is left out of the page: "<b onclick=\\"x\\">". Write it as Markdown, or with one of our directives (README, Texts).`,
      `${at(13, 1)}The link "javascript:alert(1)" is left out: pages link to http, https and mailto only. Link to a page, or write the words without a link.`,
    ]);
  });

  test('that pictures come from here and have words', async () => {
    expect(await faults('![](https://example.org/a.png)')).toEqual([
      `${at(11, 1)}The picture "https://example.org/a.png" lies elsewhere, and a page fetches nothing from others. Put the file beside the text and name it by its file name.`,
      `${at(11, 1)}The picture "https://example.org/a.png" has no words for readers who cannot see it. Write them between the square brackets: ![A harbour at low water](harbour.jpg).`,
    ]);
  });

  test('that an entry of the provenance has no date, and which is out of order', async () => {
    expect(await faults('## Provenance\n\n- 1900: b\n- 1850: a\n- Unknown.\n')).toEqual([
      `${at(15, 1)}The entry "Unknown." of the provenance does not begin with a date. Begin it with a date as EDTF and a colon, such as "1850~/1911: ...".`,
      `${at(14, 1)}The entry of 1850 begins before the entry above it. Put the entries in order of time, or correct the date.`,
    ]);
  });

  test('that something is still to be written, and that the title is not repeated', async () => {
    expect(await faults('# Harbour\n\nTO WRITE: the text.')).toEqual([
      `${at(11, 1)}"Harbour" is a heading of the first level, and the title is that already. Begin headings of the text with "##".`,
      `${at(13, 1)}A passage is still to be written. Replace the words that begin with "TO WRITE".`,
    ]);
  });
});
