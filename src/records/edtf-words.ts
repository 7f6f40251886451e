/**
 * Dates in words, for a label: `1852~` is "about 1852" and "vers 1852", `185X` is "1850s" and
 * "1850er Jahre". Month names come from the CLDR tables in the JavaScript engine; the small
 * words around them are ours.
 */
import { type EdtfDate, type EdtfPart, type EdtfPrecision } from './edtf.ts';

/** How one language says the parts; `phrase` is a date already in words. */
interface Voice {
  readonly locale: string;
  readonly decade: (tens: string) => string;
  /** The phrase as it stands after a word such as "about". */
  readonly noun: (phrase: string, precision: EdtfPrecision) => string;
  readonly about: string;
  /** "About" after "from" or "until". */
  readonly aboutWithin: string;
  readonly possibly: string;
  readonly from: (phrase: string, precision: EdtfPrecision, qualified: boolean) => string;
  readonly until: (phrase: string, precision: EdtfPrecision, qualified: boolean) => string;
  readonly startUnknown: string;
  readonly endUnknown: string;
}

const voices = {
  en: {
    locale: 'en-GB',
    decade: (tens) => `${tens}s`,
    noun: (phrase, precision) => (precision === 'decade' ? `the ${phrase}` : phrase),
    about: 'about',
    aboutWithin: 'about',
    possibly: 'possibly',
    from: (phrase) => `from ${phrase}`,
    until: (phrase) => `until ${phrase}`,
    startUnknown: 'start not known',
    endUnknown: 'end not known',
  },
  fr: {
    locale: 'fr',
    decade: (tens) => `années ${tens}`,
    noun: (phrase, precision) =>
      precision === 'decade' ? `les ${phrase}` : precision === 'day' ? `le ${phrase}` : phrase,
    about: 'vers',
    aboutWithin: 'environ',
    possibly: 'peut-être',
    from: (phrase, precision, qualified) => {
      if (!qualified && precision === 'decade') return `à partir ${phrase.replace(/^les/, 'des')}`;
      if (!qualified && precision === 'day') return `à partir ${phrase.replace(/^le/, 'du')}`;
      return /^[aeéo]/.test(phrase) ? `à partir d’${phrase}` : `à partir de ${phrase}`;
    },
    until: (phrase, precision, qualified) => {
      if (qualified) return `jusqu’à ${phrase}`;
      if (precision === 'decade') return `jusqu’${phrase.replace(/^les/, 'aux')}`;
      return precision === 'day' ? `jusqu’${phrase.replace(/^le/, 'au')}` : `jusqu’en ${phrase}`;
    },
    startUnknown: 'début inconnu',
    endUnknown: 'fin inconnue',
  },
  de: {
    locale: 'de',
    decade: (tens) => `${tens}er Jahre`,
    noun: (phrase, precision) =>
      precision === 'decade' ? `die ${phrase}` : precision === 'day' ? `den ${phrase}` : phrase,
    about: 'um',
    aboutWithin: 'etwa',
    possibly: 'möglicherweise',
    from: (phrase, precision) =>
      precision === 'decade'
        ? `ab ${phrase.replace(/\bdie (.*) Jahre$/, 'den $1 Jahren')}`
        : `ab ${phrase.replace(/\bden /, 'dem ')}`,
    until: (phrase, precision, qualified) => {
      if (qualified) return `bis ${phrase}`;
      if (precision === 'decade') return `bis in ${phrase}`;
      return precision === 'day' ? `bis ${phrase.replace(/^den/, 'zum')}` : `bis ${phrase}`;
    },
    startUnknown: 'Beginn unbekannt',
    endUnknown: 'Ende unbekannt',
  },
  es: {
    locale: 'es',
    decade: (tens) => `década de ${tens}`,
    noun: (phrase, precision) =>
      precision === 'decade' ? `la ${phrase}` : precision === 'day' ? `el ${phrase}` : phrase,
    about: 'hacia',
    aboutWithin: 'aproximadamente',
    possibly: 'posiblemente',
    from: (phrase) => `desde ${phrase}`,
    until: (phrase) => `hasta ${phrase}`,
    startUnknown: 'comienzo desconocido',
    endUnknown: 'final desconocido',
  },
} as const satisfies Readonly<Record<string, Voice>>;

export type EdtfLanguage = keyof typeof voices;
export const edtfLanguages = Object.keys(voices) as EdtfLanguage[];

/** The language whose words serve a BCP 47 tag: `fr-CA` is French; English where there are none. */
export function edtfLanguage(tag: string): EdtfLanguage {
  const primary = tag.toLowerCase().split('-')[0];
  return edtfLanguages.find((language) => language === primary) ?? 'en';
}

function bare(part: EdtfPart, voice: Voice): string {
  if (part.precision === 'century') {
    // "19th century" would be 1801 to 1900; 18XX is 1800 to 1899.
    return `${part.year.replace('XX', '00')}–${part.year.replace('XX', '99')}`;
  }
  if (part.precision === 'decade') return voice.decade(part.year.replace('X', '0'));
  if (part.month === null) return part.year;
  const said = new Intl.DateTimeFormat(voice.locale, {
    timeZone: 'UTC',
    year: 'numeric',
    month: 'long',
    ...(part.day === null ? {} : { day: 'numeric' }),
  }).format(part.first * 86_400_000);
  return voice.locale === 'fr' ? said.replace(/^1 /, '1er ') : said;
}

function qualified(part: EdtfPart): boolean {
  return part.approximate || part.uncertain;
}

function partInWords(part: EdtfPart, voice: Voice, within: boolean): string {
  const phrase = bare(part, voice);
  if (!qualified(part)) return within ? voice.noun(phrase, part.precision) : phrase;
  const words = [
    part.uncertain ? voice.possibly : '',
    part.approximate ? (within ? voice.aboutWithin : voice.about) : '',
    voice.noun(phrase, part.precision),
  ];
  return words.filter((word) => word !== '').join(' ');
}

/** A date or interval in words, such as "about 1852" or "from March 1850, end not known". */
export function formatEdtf(date: EdtfDate, language: EdtfLanguage): string {
  const voice: Voice = voices[language];
  const { from, to } = date;
  if (typeof from === 'string') {
    if (typeof to === 'string') return date.text;
    const until = voice.until(partInWords(to, voice, true), to.precision, qualified(to));
    return from === 'unknown' ? `${until}, ${voice.startUnknown}` : until;
  }
  if (typeof to === 'string') {
    const since = voice.from(partInWords(from, voice, true), from.precision, qualified(from));
    return to === 'unknown' ? `${since}, ${voice.endUnknown}` : since;
  }
  if (!date.interval) return partInWords(from, voice, false);
  const plain = [from, to].every((part) => part.precision === 'year' && !qualified(part));
  return [from, to].map((part) => partInWords(part, voice, false)).join(plain ? '–' : ' – ');
}
