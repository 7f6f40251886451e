/** Die Wörter der Seiten auf Deutsch: Rahmen, Listen, Suche, Lektionen, Fußzeile. */
import { plural } from '../locale.ts';
import type { SiteWords } from '../en/site.ts';

const many = plural('de');

export const site: SiteWords = {
  within: (name) => name,
  languages: 'Sprachen',
  asWritten: (name) =>
    `Dieser Text ist in der Sprache gezeigt, in der er geschrieben wurde (${name}).`,
  skip: 'Zum Text',
  menu: 'Seiten',
  nav: {
    plates: 'Platten',
    techniques: 'Techniken',
    lessons: 'Lektionen',
    glossary: 'Glossar',
    about: 'Über uns',
    search: 'Suche',
  },

  search: {
    title: 'Suche',
    lead: 'In den Wörtern jeder Platte, Stelle, Technik und Lektion.',
    kind: { plate: 'Platte', technique: 'Technik', lesson: 'Lektion', page: 'Seite' },
    field: 'Gesuchte Wörter',
    go: 'Suchen',
    none: (asked) => `Keine Seite enthält „${asked}“.`,
    one: (asked) => `Eine Seite enthält „${asked}“.`,
    several: (count, asked) => `${count} Seiten enthalten „${asked}“.`,
    more: 'Mehr zeigen',
    failed:
      'Das Wörterverzeichnis konnte nicht geladen werden. Die Listen unten führen zu jeder Seite.',
    without: 'Die Wortsuche braucht Skripte. Auch diese Listen führen zu allem:',
    covered:
      'Platten mit einem Hinweis vorab werden nicht durchsucht; sie stehen in der Liste der Platten.',
    ways: 'Andere Zugänge',
  },

  home: {
    opening: 'Die erste Platte',
    openingLink: 'Zur Seite dieser Platte',
    plates: 'Die Platten',
    all: (count) =>
      many(count, { one: 'Das Verzeichnis', other: `Das Verzeichnis aller ${count} Platten` }),
    read: 'Zum Lesen',
  },

  index: {
    title: 'Platten',
    lead: 'Jede Platte ist zweimal zu sehen: wie sie mit einer Lampe von der Seite vor dunklem Raum erscheint, und wie sie erscheint, wenn der Spiegel etwas Helles zeigt.',
    narrow: 'Liste eingrenzen',
    any: 'Alle',
    process: 'Verfahren',
    size: 'Format',
    maker: 'Urheber',
    place: 'Ort',
    made: 'Datum',
    from: 'Ab',
    to: 'bis',
    photographed: 'Licht',
    reading: 'Erscheinung',
    condition: 'Zustand',
    decade: (year) => `${year}er Jahre`,
    count: (plates) => many(plates, { one: ' Platte', other: ' Platten' }),
    shown: 'Gezeigte Platten:',
    none: 'Keine Platte passt zu allem. Nehmen Sie eine Wahl zurück oder beginnen Sie neu.',
    again: 'Neu beginnen',
    order: 'Geordnet nach',
    orders: { date: 'Datum', title: 'Titel', number: 'Nummer', size: 'Format' },
    by: (order) => `Platten nach ${order}`,
    search: 'In den Wörtern aller Seiten suchen',
  },

  techniques: {
    title: 'Techniken',
    one: 'Technik',
    lead: 'Eine Platte, mehrere Lichter. Was jedes zeigt, wie es aufgebaut wird und was schiefgehen kann.',
    plates: 'So fotografierte Platten',
    planner: 'Einen Aufbau planen',
    plannerNote: 'Zahlen und Zeichnungen für die eigene Kamera und Platte.',
    findings: 'Befunde, um die es auf dieser Seite geht',
  },
  lessons: {
    title: 'Lektionen',
    one: 'Lektion',
    lead: 'Seiten für den Unterricht: kurz, mit etwas zu tun.',
    answer: 'Die Antwort',
    answerOf: (title) => `Die Antwort: ${title}`,
    answerLink: 'Zur Antwort auf einer eigenen Seite',
    back: 'Zurück zur Lektion',
    print: 'Ein Blatt für die Klasse: diese Seite drucken. Die Antwort steht nicht darauf.',
    printNow: 'Das Blatt drucken',
    screen: 'Ganzer Bildschirm',
    live: 'Die kippende Platte',
    liveNote:
      'Ein Regler bewegt Zeichnung und Platte. Ohne Skripte: die Platte auf zwei Arten gehalten.',
    turn: 'Die Platte kippen',
    question: 'Eine Frage',
    forTeacher: 'Für die Lehrkraft',
  },
  contents: 'Auf dieser Seite',
  feed: 'Neue und geänderte Platten',
  previewOf: (title) => `„${title}“, positiv und negativ nebeneinander`,
  moved: {
    title: 'Diese Seite ist umgezogen',
    text: (title) => `„${title}“ hat jetzt eine andere Adresse.`,
  },

  embed: {
    page: (title) => `Die Seite von „${title}“ öffnen`,
  },

  missing: {
    title: 'Seite nicht gefunden',
    text: 'Unter dieser Adresse ist nichts. Vielleicht wurde die Platte zurückgezogen oder die Adresse falsch geschrieben.',
    home: 'Zum Anfang',
  },

  footer: {
    planner: 'Aufbauplaner',
    write: 'Schreiben Sie uns',
    rights: 'Bilder, wenn eine Platte nichts anderes sagt:',
    made: 'Erstellt mit Mirrorleaf. Keine Cookies, nichts wird von anderswo geladen.',
  },
};
