import { describe, expect, test } from 'vitest';
import { logoFault } from '../../../src/publish/theme/logo-fault.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const svg = (inside: string, attributes = '') =>
  bytes(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"${attributes}>${inside}</svg>`);

describe('a logo', () => {
  test.each([
    ['a path', svg('<path d="M0 0h9v9H0z" fill="url(#g)"/>')],
    ['a gradient used by its name', svg('<linearGradient id="g"/><use href="#g"/>')],
    [
      'what drawing programs write of themselves',
      bytes(
        '<?xml version="1.0" encoding="UTF-8" standalone="no"?>\r\n<svg xmlns="http://www.w3.org/2000/svg" ' +
          'xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#" xmlns:dc="http://purl.org/dc/elements/1.1/">' +
          '<metadata><rdf:RDF><dc:title>A sign</dc:title></rdf:RDF></metadata>\t<path d="M0 0h9v9z"/></svg>',
      ),
    ],
    ['a picture within it', svg('<image href="data:image/png;base64,iVBOR"/>')],
    [
      'the words "on" and "set" in its text',
      svg('<text>set on = off</text>'.replace(' = ', ' is ')),
    ],
  ])('with %s is taken', (_, file) => {
    expect(logoFault('logo.svg', file)).toBeNull();
  });

  test.each([
    ['a script', svg('<script>alert(1)</script>')],
    ['a script under a prefix', svg('<s:script xmlns:s="http://www.w3.org/2000/svg"/>')],
    ['a script under a prefix with a full stop', svg('<a.b:script xmlns:a.b="x"/>')],
    ['a script under a prefix of other letters', svg('<é:script xmlns:é="x"/>')],
    ['an animation under such a prefix', svg('<銀.a:set attributeName="onclick"/>')],
    ['a frame of HTML', svg('<iframe xmlns="http://www.w3.org/1999/xhtml" srcdoc="&lt;b/>"/>')],
    [
      'a frame of HTML hidden by an entity',
      svg('<h:iframe xmlns:h="http://www.w3.org/1999/&#x78;html" srcdoc="&lt;b/>"/>'),
    ],
    [
      'another encoding, in which signs may vanish',
      bytes(
        '<?xml version="1.0" encoding="ISO-2022-JP"?><svg xmlns="http://www.w3.org/2000/svg"/>',
      ),
    ],
    ['a sign of such an encoding', svg('<scr\u001b(Bipt>alert(1)</scr\u001b(Bipt>')],
    ['an event attribute', svg('<path onclick="alert(1)"/>')],
    ['an event attribute on the root', svg('', ' onload="alert(1)"')],
    ['an event attribute after a slash', svg('<path/onclick="alert(1)">')],
    ['a link that runs', svg('<a href="javascript:alert(1)"><path/></a>')],
    ['a link without quotes', svg('<a xlink:href=javascript:alert(1)></a>')],
    ['a link to another host', svg('<image href="https://elsewhere.example/p.png"/>')],
    ['a link hidden by an entity', svg('<a href="&#106;avascript:alert(1)"/>')],
    ['an animation of a link', svg('<animate attributeName="href" to="javascript:alert(1)"/>')],
    ['foreign content', svg('<foreignObject><body/></foreignObject>')],
    ['an entity of its own', bytes('<!DOCTYPE svg [<!ENTITY a "b">]><svg>&a;</svg>')],
    ['an address in its style', svg('<style>path{fill:url(https://elsewhere.example/#g)}</style>')],
    ['an imported style sheet', svg('<style>@import "x.css"</style>')],
    ['a drawing of another name', bytes('<html></html>')],
    ['letters that are none', new Uint8Array([0x3c, 0xff, 0xfe])],
  ])('with %s is refused', (_, file) => {
    expect(logoFault('logo.svg', file)).not.toBeNull();
  });

  test('of another kind than its name says is refused', () => {
    expect(logoFault('logo.png', svg(''))).toBe('does not begin as a PNG file does');
    expect(logoFault('logo.webp', svg(''))).toBe('does not begin as a WebP file does');
    expect(logoFault('logo.png', bytes('\x89PNG').subarray(1))).not.toBeNull();
  });

  test('that is very large is refused with its size', () => {
    expect(logoFault('logo.svg', new Uint8Array(500_001))).toBe(
      'has 500001 bytes; a logo may have 500000',
    );
  });
});
