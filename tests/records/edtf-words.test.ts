/** The phrases were written by hand from each language's grammar; month names are CLDR's. */
import { expect, test } from 'vitest';
import { parseEdtf } from '../../src/records/edtf.ts';
import { edtfLanguage, edtfLanguages, formatEdtf } from '../../src/records/edtf-words.ts';

test.each([
  ['1852', ['1852', '1852', '1852', '1852']],
  ['1852~', ['about 1852', 'vers 1852', 'um 1852', 'hacia 1852']],
  [
    '1852%',
    [
      'possibly about 1852',
      'peut-être vers 1852',
      'möglicherweise um 1852',
      'posiblemente hacia 1852',
    ],
  ],
  ['185X', ['1850s', 'années 1850', '1850er Jahre', 'década de 1850']],
  [
    '185X~',
    ['about the 1850s', 'vers les années 1850', 'um die 1850er Jahre', 'hacia la década de 1850'],
  ],
  ['18XX', ['1800–1899', '1800–1899', '1800–1899', '1800–1899']],
  ['1850-03', ['March 1850', 'mars 1850', 'März 1850', 'marzo de 1850']],
  ['1850-03-01', ['1 March 1850', '1er mars 1850', '1. März 1850', '1 de marzo de 1850']],
  ['1849/1855', ['1849–1855', '1849–1855', '1849–1855', '1849–1855']],
  ['1850~/1855', ['about 1850 – 1855', 'vers 1850 – 1855', 'um 1850 – 1855', 'hacia 1850 – 1855']],
  ['../1860', ['until 1860', 'jusqu’en 1860', 'bis 1860', 'hasta 1860']],
  [
    '../186X',
    [
      'until the 1860s',
      'jusqu’aux années 1860',
      'bis in die 1860er Jahre',
      'hasta la década de 1860',
    ],
  ],
  [
    '../1860-03-05',
    [
      'until 5 March 1860',
      'jusqu’au 5 mars 1860',
      'bis zum 5. März 1860',
      'hasta el 5 de marzo de 1860',
    ],
  ],
  [
    '1850-04/..',
    ['from April 1850', 'à partir d’avril 1850', 'ab April 1850', 'desde abril de 1850'],
  ],
  [
    '185X/..',
    [
      'from the 1850s',
      'à partir des années 1850',
      'ab den 1850er Jahren',
      'desde la década de 1850',
    ],
  ],
  [
    '/1860~',
    [
      'until about 1860, start not known',
      'jusqu’à environ 1860, début inconnu',
      'bis etwa 1860, Beginn unbekannt',
      'hasta aproximadamente 1860, comienzo desconocido',
    ],
  ],
  [
    '1850/',
    [
      'from 1850, end not known',
      'à partir de 1850, fin inconnue',
      'ab 1850, Ende unbekannt',
      'desde 1850, final desconocido',
    ],
  ],
])('says %s', (text, phrases) => {
  const date = parseEdtf(text)!;
  expect(edtfLanguages.map((language) => formatEdtf(date, language))).toEqual(phrases);
});

test('takes the language of a tag and English where it has no words', () => {
  expect(['fr-CA', 'DE', 'es', 'en-GB', 'cy'].map(edtfLanguage)).toEqual([
    'fr',
    'de',
    'es',
    'en',
    'en',
  ]);
});
