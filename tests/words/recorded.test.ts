import { describe, expect, test } from 'vitest';
import { glossMade, relightCaution, reliefMade } from '../../src/pipeline/combine/lights/words.ts';
import { colouringWords } from '../../src/pipeline/combine/hand-colouring-words.ts';
import { rakingWords } from '../../src/pipeline/combine/raking-words.ts';
import { record as german } from '../../src/words/de/record.ts';
import { record as english } from '../../src/words/en/record.ts';
import { record as spanish } from '../../src/words/es/record.ts';
import { record as french } from '../../src/words/fr/record.ts';
import { recordedIn } from '../../src/words/recorded.ts';

const places = (text: string) => [...text.matchAll(/\{\d!?\}/g)].map(([one]) => one).sort();

test.each(Object.entries({ fr: french, de: german, es: spanish }))(
  'in %s every sentence keeps the numbers and names of the English one',
  (_, words) => {
    for (const key of Object.keys(english) as (keyof typeof english)[])
      expect(places(words[key]), key).toEqual(places(english[key]));
  },
);

describe('recordedIn', () => {
  const say = recordedIn('de');

  test('says a sentence with its number written as the language writes it', () => {
    const text = 'One photograph, resampled into the frame of the base; off by at most 0.10 px.';
    expect(say(text)).toBe(
      'Eine Fotografie, in den Rahmen der Grundaufnahme umgerechnet; Abweichung höchstens 0,10 px.',
    );
  });

  test('says a part of a sentence, and several sentences one after another', () => {
    const merged =
      '5 exposures merged in linear light by the files’ profile, each weighed by its predicted noise, laid into the frame of the base. Shown as a rendering with one curve for the whole picture.';
    expect(say(merged)).toBe(
      '5 Belichtungen vereinigt in linearem Licht nach dem Profil der Dateien, jede nach ihrem vorausgesagten Rauschen gewichtet, in den Rahmen der Grundaufnahme gelegt. Gezeigt als Wiedergabe mit einer Kurve für das ganze Bild.',
    );
    expect(
      say('Frame 3 of a set of 9, as it was taken; it could not be aligned to the base.'),
    ).toBe(
      'Bild 3 einer Reihe von 9, wie aufgenommen; ließ sich nicht an der Grundaufnahme ausrichten.',
    );
  });

  test('says where a scale comes from, in whatever way it was put together', () => {
    expect(say('measured from the edges of the plate')).toBe('gemessen nach den Kanten der Platte');
    expect(say('as stated in the sitting, uncertainty assumed')).toBe(
      'wie in der Sitzung angegeben, Unsicherheit angenommen',
    );
  });

  test('leaves names as they are', () => {
    expect(say('Blur beyond that of "normal-2016"')).toBe(
      'Unschärfe über die von „normal-2016“ hinaus',
    );
  });

  test('says nothing of a text of which it does not know a part', () => {
    expect(say('One photograph, found in a drawer.')).toBeNull();
    expect(say('Shown as a rendering with one curve for the whole picture. And more.')).toBeNull();
    expect(recordedIn('he-x-pseudo')(relightCaution)).toBeNull();
  });

  test('leaves English as it is', () => {
    expect(recordedIn('en')('Anything.')).toBe('Anything.');
  });

  test('knows what the stages say of surfaces, raking and colouring', () => {
    const said = [glossMade, reliefMade(13), reliefMade(1), rakingWords.made(3)];
    for (const text of [...said, rakingWords.caution, colouringWords.made, colouringWords.caution])
      for (const language of ['fr', 'de', 'es'])
        expect(recordedIn(language)(text), text).not.toBeNull();
  });
});
