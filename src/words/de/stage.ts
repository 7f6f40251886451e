/** Die Wörter im Gerüst des Betrachters auf Deutsch: Bedienung, Felder, Namen der Ansichten. */
import type { StageWords } from '../en/stage.ts';
import { modes } from './modes.ts';

export const stage: StageWords = {
  readings: { positive: 'Positiv', negative: 'Negativ', mixed: 'Gemischt', none: null },
  lights: {
    normal: 'Seitenlampe',
    raking: 'Streiflicht',
    axial: 'axiales Licht',
    transmitted: 'Durchlicht',
    ultraviolet: 'Ultraviolett',
    infrared: 'Infrarot',
    scan: 'Scanner',
    other: null,
  },
  made: {
    merge: 'vereinte Belichtungen',
    relight: 'bewegliche Lampe',
    mosaic: 'zusammengesetzte Nahaufnahmen',
    local: 'vereinte Belichtungen, Einzelheiten betont',
    slope: 'Neigung der Oberfläche',
    relief: 'Relief der Oberfläche',
    gloss: 'Glanz der Oberfläche',
    adds: 'was Streiflicht hinzufügt',
    colouring: 'Handkolorierung',
  },
  frame: {
    single: (n, of) => `Fotografie ${n} von ${of}`,
    bracket: (n, of) => `Belichtung ${n} von ${of}`,
    lights: (n, of) => `Lampe ${n} von ${of}`,
    mosaic: (n, of) => `Nahaufnahme ${n} von ${of}`,
  },
  apart: 'sie wurde nicht auf die anderen Bilder gelegt',
  alternative: (title, view) => `${title}: ${view}.`,

  register: {
    none: 'Kein Positiv und Negativ dieser Platte liegen aufeinander; ihre Bilder sind nebeneinander zu betrachten.',
    one: 'Von dieser Platte gibt es ein Bild.',
    inFrame: 'Positiv und Negativ liegen im Rahmen der Platte.',
    within: (pixels, micrometres) =>
      `Positiv und Negativ liegen auf ${pixels} genau aufeinander${micrometres === null ? '' : ` (${micrometres})`}.`,
  },

  pixels: (size) => `(${size} Pixel)`,
  ways: 'Arten zu betrachten',
  sizeAndTools: 'Größe und Werkzeuge',
  modes,
  smaller: 'Kleiner',
  larger: 'Größer',
  whole: 'Ganze Platte',
  tools: {
    move: 'Bewegen',
    measure: 'Messen',
    spots: 'Stellen',
    looks: 'Rundgänge',
    take: 'Mitnehmen',
    cite: 'Zitieren',
  },
  correct: 'Seiten tauschen',
  screen: 'Ganzer Bildschirm',
  divider: 'Trennlinie',

  views: {
    view: 'Ansicht',
    first: 'Erste',
    second: 'Zweite',
    swap: 'Vertauschen',
    turned: 'Gedreht',
    keeps: 'Bleibt fest auf',
    onScreen: 'dem Bildschirm',
    onPlate: 'der Platte',
    notOffered: (names, why) =>
      names.length === 1
        ? `„${names[0]}“ steht hier nicht zur Wahl: ${why}. Zu sehen ist sie unter Ansehen und Daneben.`
        : `${names.length} Ansichten stehen hier nicht zur Wahl: ${why}. Zu sehen sind sie unter Ansehen und Daneben.`,
    secondPlate: 'Zweite Platte',
    thisPlate: 'diese Platte',
    roughly: (names, why) =>
      names.length === 1
        ? `„${names[0]}“ liegt nicht auf den anderen (${why}); Orte stimmen nur ungefähr überein.`
        : `${names.length} Ansichten liegen nicht auf den anderen (${why}); Orte stimmen nur ungefähr überein.`,
    difference:
      'Zwischen beiden: mittleres Grau, wo sich nichts geändert hat, heller, wo die zweite heller ist, dunkler, wo sie dunkler ist. Ein Zehntel der Tonskala ist als die Hälfte des Graus gezeichnet.',
    differenceNote:
      'Eine andere Lampe, Belichtung oder Deckung sieht aus wie eine Änderung der Platte. Doppelte Kanten sind leicht verschobene Bilder.',
  },

  tilt: {
    eye: 'Auge',
    plate: 'Platte',
    tilt: 'Kippen',
    dark: 'zum Dunklen',
    bright: 'zum Hellen',
    less: 'Weniger',
    more: 'Mehr',
    turning: 'Zum Kipppunkt',
    here: 'Ausschnitt bestimmen',
    room: 'Raum',
    rooms: { dark: 'dunkel', window: 'ein Fenster', bright: 'hell' },
    drag: 'Ziehen bewegt das Bild',
    device: 'Diesem Gerät folgen',
    note: 'Das Bild unter der Lampe und das Bild im Spiegel werden in linearem Licht addiert, wie das Auge sie sähe, und auf eine Helligkeit gebracht.',
  },

  lamp: {
    height: 'Höhe der Lampe',
    bearing: 'Azimut der Lampe',
    plate: 'Platte',
    lens: 'Objektiv',
    bearingField: 'Azimut',
    heightField: 'Höhe',
    drawn: 'Was gezeichnet wird',
    as: {
      lit: 'Beleuchtet',
      relief: 'Relief',
      slope: 'Neigung',
      gloss: 'Glanz',
      frame: 'Einzelaufnahme',
    },
    captured: 'Fotografierte Lampen',
    nearest: 'Nächste fotografierte Lampe',
    previous: 'Aufnahme davor',
    next: 'Aufnahme danach',
    note: 'Ziehen Sie die Lampe am Rand der Platte und am Viertelkreis entlang, oder nutzen Sie die beiden Lineale.',
  },

  range: {
    exposure: 'Belichtung',
    white: 'Weißpunkt',
    drawn: 'Was gezeichnet wird',
    rendering: 'Für den Bildschirm',
    merged: 'Vereintes Licht',
    marks: 'Markieren, was keine Aufnahme fasst',
    frames: 'Wie eine einzelne Belichtung',
    note: 'Die Belichtungsreihe fasst mehr Licht, als ein Bildschirm zeigt. Wählen Sie, welcher Teil zu sehen ist.',
  },

  move: { group: 'Bild bewegen', left: 'Links', right: 'Rechts', up: 'Hoch', down: 'Runter' },

  measure: {
    group: 'Messen',
    kinds: {
      length: 'eine Länge',
      angle: 'einen Winkel',
      area: 'eine Fläche',
      profile: 'Leuchtdichte entlang einer Linie',
    },
    middle: 'Punkt in der Bildmitte setzen',
    close: 'Umriss schließen',
    again: 'Neu beginnen',
    save: 'Zahlen als Tabelle speichern',
    noScale: (from) => `Maßstab: unbekannt. ${from}`,
    scale: (value, uncertainty, from) =>
      `Maßstab: ${value} Pixel je Millimeter${uncertainty === null ? '' : ` ± ${uncertainty}`}; ${from}.`,
    actual: 'Wahre Größe auf diesem Bildschirm',
    card: (width) => `Machen Sie die Linie so breit wie eine Bankkarte (${width})`,
    cardSet: 'Jetzt ist sie so breit',
    one: 'Wahre Größe',
    ten: 'Zehnfach',
  },

  spots: {
    group: 'Stellen',
    none: 'Auf dieser Platte ist noch keine Stelle markiert.',
    title: 'Titel einer neuen Stelle',
    note: 'Notiz',
    shape: 'Form der neuen Stelle',
    rectangle: 'Rechteck zeichnen',
    outline: 'Umriss zeichnen',
    middle: 'Punkt in der Bildmitte setzen',
    close: 'Umriss schließen',
    mark: 'Form oder Ausschnitt behalten',
    save: 'Meine Stellen als Datei speichern',
    open: 'Datei mit Stellen öffnen',
    own: 'Ihre Stellen bleiben in diesem Browser; nichts wird gesendet. Die Datei folgt W3C Web Annotation.',
  },

  looks: {
    group: 'Rundgänge',
    look: 'Rundgang',
    back: 'Zurück',
    next: 'Weiter',
    again: 'Diesen Schritt noch einmal',
    class: 'Große Schrift für die Klasse',
  },

  take: {
    group: 'Mitnehmen',
    png: 'Ausschnitt als PNG speichern',
    tiff: 'Als TIFF speichern',
    print: 'Ausschnitt als Abbildung drucken',
    note: 'In voller Auflösung, mit Maßstab, Zitat, Nachweis und Rechten unter dem Bild und in der Datei. Ein TIFF ist nicht komprimiert: drei Byte je Pixel.',
  },

  cite: {
    group: 'Zitieren',
    citation: 'Der Ausschnitt für eine Fußnote',
    copy: 'Kopieren',
    embedding: 'Um ihn auf einer eigenen Seite zu zeigen, fügen Sie dies dort ein',
    copyCode: 'Code kopieren',
  },
};
