/** What the viewer's tools say in the reader's browser, in German. */
import { plural } from '../locale.ts';
import type { ToolWords } from '../en/tools.ts';
import { modes } from './modes.ts';

const many = plural('de');

export const tools: ToolWords = {
  measure: {
    begin: {
      length: 'Drücken Sie im Bild auf beide Enden dessen, was Sie messen wollen.',
      angle: 'Drücken Sie auf ein Ende, den Scheitel und das andere Ende.',
      area: 'Drücken Sie die Ecken nacheinander, dann „Umriss schließen“.',
      profile: 'Drücken Sie auf beide Enden der Linie, entlang der die Leuchtdichte gesucht ist.',
    },
    inPixels: 'Der Maßstab dieses Bildes ist nicht bekannt: Längen sind in Pixeln angegeben.',
    corners: (set) =>
      `${many(set, { one: `${set} Ecke ist gesetzt`, other: `${set} Ecken sind gesetzt` })}. Drücken Sie die nächste${set > 2 ? ' oder schließen Sie den Umriss' : ''}.`,
    corner: 'Ein Ende ist gesetzt. Drücken Sie auf den Scheitel.',
    otherEnd: 'Drücken Sie auf das andere Ende.',
    secondEnd: 'Ein Ende ist gesetzt. Drücken Sie auf das andere.',
    threeCorners: 'Eine Fläche braucht mindestens drei Ecken.',
    noArea: 'Der Maßstab dieses Bildes ist nicht bekannt, die Fläche also auch nicht.',
    pixels: (number) => `${number} Pixel; der Maßstab ist nicht bekannt`,
    uncertain: (value) => `${value}; die Unsicherheit des Maßstabs ist nicht bekannt`,
    standard: (value, uncertainty) => `${value} ± ${uncertainty} (Standardunsicherheit)`,
    profile: (length, view, low, high, factor) =>
      `${length}. Leuchtdichte von „${view}“ entlang der Linie, linear: ${low} bis ${high} von Weiß${factor === 1 ? '' : `, gelesen in 1/${factor} der vollen Größe`}.`,
    along: (unit) => `entlang (${unit})`,
    luminance: 'Leuchtdichte (linear 0 bis 1)',
    inPixel: 'Pixel',
    keptScreen: (number) =>
      `In diesem Browser gemerkt: ${number} Pixel je Millimeter auf diesem Bildschirm.`,
    noActual: 'Der Maßstab dieses Bildes ist nicht bekannt, seine wahre Größe also auch nicht.',
    tellScreen:
      'Geben Sie zuerst die Größe dieses Bildschirms an: machen Sie die Linie so breit wie eine Bankkarte.',
    actual: 'In wahrer Größe auf diesem Bildschirm gezeigt.',
    times: (times) => `${times}-fach vergrößert gezeigt, auf diesem Bildschirm.`,
  },

  spots: {
    begin: {
      rectangle: 'Drücken Sie im Bild auf zwei gegenüberliegende Ecken.',
      outline: 'Drücken Sie die Ecken des Umrisses nacheinander, dann „Umriss schließen“.',
    },
    drawn: {
      rectangle: 'Das Rechteck ist gezeichnet. Geben Sie ihm einen Titel und behalten Sie es.',
      outline: 'Der Umriss ist gezeichnet. Geben Sie ihm einen Titel und behalten Sie ihn.',
    },
    three: 'Ein Umriss braucht mindestens drei Ecken.',
    unfinished: 'Die Form ist nicht fertig: drücken Sie den Rest oder wählen Sie sie ab.',
    title: 'Geben Sie der Stelle zuerst einen Titel.',
    kept: 'Nur in diesem Browser behalten.',
    notKept: 'Dieser Browser behält hier nichts.',
    taken: (fresh, all) =>
      many(fresh, {
        one: `${fresh} von ${all} Stellen war neu und ist behalten.`,
        other: `${fresh} von ${all} Stellen waren neu und sind behalten.`,
      }),
    address: 'Adresse',
    addressOf: (title) => `Adresse der Stelle ${title}`,
    remove: (title) => `„${title}“ entfernen`,
    notJson: 'Diese Datei ist kein JSON, Stellen konnten nicht gelesen werden.',
    tooLarge: 'Diese Datei ist größer als jede Liste von Stellen und wurde nicht gelesen.',
    nothing:
      'Diese Datei enthält keine Anmerkung mit Rechteck oder Umriss auf einer Ansicht dieser Platte.',
  },

  take: {
    making: 'Das Bild wird zusammengesetzt …',
    failed: 'Das Bild konnte nicht erstellt werden.',
    nothing: 'Nichts ist zu sehen, das mitzunehmen wäre.',
    rights: (rights) => `Rechte: ${rights}`,
    firstOnly: 'Nur das erste Bild wurde genommen.',
    full: (width, height) => `In voller Auflösung erstellt, ${width} mal ${height} Pixel.`,
    smaller: (factor, width, height) =>
      `In 1/${factor} der vollen Auflösung erstellt, ${width} mal ${height} Pixel: alles wäre für einen Browser zu groß.`,
  },

  cite: {
    copied: 'Kopiert.',
    marked: 'Die Wörter sind markiert; kopieren Sie sie mit Tastatur oder Menü.',
    and: ' und ',
    title: (title) => `„${title}“`,
    modes,
    view: (mode, names) => `Ansicht ${mode} (${names})`,
    region: (region) => `Bereich ${region} in Pixeln des Plattenrahmens`,
    turned: 'Seiten getauscht',
    picture: (digests, date) => `Bild ${digests}, gelesen ${date}.`,
  },
};
