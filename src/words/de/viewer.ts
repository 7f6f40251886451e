/** Was der Betrachter im Browser sagt, auf Deutsch. */
import type { ViewerWords } from '../en/viewer.ts';
import { tools } from './tools.ts';

const sides = [
  'von oben',
  'von rechts oben',
  'von rechts',
  'von rechts unten',
  'von unten',
  'von links unten',
  'von links',
  'von links oben',
];

export const viewer: ViewerWords = {
  ...tools,
  faults: {
    pictures: 'Die Bilder konnten nicht geöffnet werden.',
    picture: 'Das Bild konnte nicht gelesen werden.',
    part: 'Ein Teil des Bildes konnte nicht geladen werden.',
    offline: 'Das Bild konnte nicht geladen werden: keine Verbindung.',
    answer: (status, address) => `Das Bild konnte nicht geladen werden: ${status} bei ${address}.`,
    notPicture: (address) => `Was von ${address} kam, beschreibt kein Bild.`,
    dataOffline: 'Die Daten dieser Ansicht konnten nicht geladen werden: keine Verbindung.',
    dataAnswer: (status, address) =>
      `Die Daten dieser Ansicht konnten nicht geladen werden: ${status} bei ${address}.`,
    notData: (address) => `Was von ${address} kam, beschreibt keine Datenebenen.`,
    noPixels: 'Dieser Browser lässt keine Pixel lesen.',
    noDrawing: 'Dieser Browser lässt keine Bilder zeichnen.',
    noScreen: 'Dieser Browser erlaubt hier nicht den ganzen Bildschirm.',
    otherPlate: 'Was über die andere Platte bekannt ist, konnte nicht geladen werden.',
    noPlate: (slug) => `Es gibt keine Platte „${slug}“, die neben dieser zu zeigen wäre.`,
  },

  surface: {
    name: (title, n) =>
      `${title}: ${['Bild', 'zweites Bild', 'drittes Bild'][n]}. Pfeiltasten bewegen es, Plus und Minus ändern die Größe, 0 zeigt es ganz.`,
    plainTilt:
      'Dieser Browser zeichnet hier ohne Shader: Kippen ist als einfache Überblendung gezeigt, wie Licht sich nicht verhält.',
    plainMode:
      'Dieser Browser zeichnet hier ohne Shader, die diese Art zu betrachten braucht; das Bild ist gezeigt, wie es ist.',
  },

  stills: {
    plain:
      'Dieser Browser kann Positiv und Negativ nicht selbst mischen: Kippen geht in Schritten, die vorab in linearem Licht gemischt wurden.',
    step: (held, n, count) => `${held} (Schritt ${n} von ${count})`,
    title: 'Zwischen Positiv und Negativ',
    alternative: (title, degrees) => `${title}, um ${degrees} gekippt`,
  },

  caption: {
    tilt: (degrees) => `Positiv und Negativ in linearem Licht addiert, um ${degrees} gekippt`,
    still: (degrees) => `Positiv und Negativ vorab addiert, um ${degrees} gekippt`,
    fade: 'Positiv und Negativ in einfacher Überblendung',
    relief: 'Relief der Oberfläche, aus ihren Neigungen gezeichnet',
    slope: 'Neigung der Oberfläche zur Lampe',
    gloss: 'Glanz der Oberfläche',
    frame: (n, of) => `Aufnahme ${n} von ${of}, wie sie gemacht wurde`,
    lamp: (place, photographs) =>
      `Unter einer Lampe: ${place}, berechnet aus ${photographs} Fotografien`,
    rendered: 'Vereinte Belichtungen, für den Bildschirm',
    merged: (stops) => `Vereinte Belichtungen, Licht bei ${stops}`,
    exposure: (seconds) => `Vereinte Belichtungen, wie eine einzelne von ${seconds}`,
  },

  picture: {
    waiting:
      'Teile des Bildes lassen auf sich warten: die Verbindung ist langsam. Was da ist, lässt sich schon bewegen und drehen.',
    across: (percent) => `bei ${percent} der Breite`,
    degrees: (degrees) => `${degrees} Grad`,
    turned:
      'Links und rechts vertauscht: Schrift und Knöpfe liegen wie vor der Kamera. Die Platte selbst zeigt sie verkehrt.',
    unturned: 'Wie die Platte aussieht: links und rechts wie am Objekt.',
    noScale: 'Maßstab unbekannt: keine Längen',
    noFrame: 'dieses Bild liegt nicht im Rahmen der Platte',
    sameScale:
      'Beide Platten sind im selben Maßstab gezeigt: ein Millimeter ist bei beiden gleich lang.',
    notSameScale:
      'Der Maßstab einer der beiden ist nicht bekannt, sie sind daher nicht im selben Maßstab gezeigt.',
  },

  address: {
    noView: (id) => `Diese Platte hat keine Ansicht „${id}“ mehr.`,
    noSpot: (id) => `Diese Platte hat keine Stelle „${id}“ mehr.`,
    changed: 'Das Bild hat sich geändert, seit diese Adresse entstand; gezeigt ist derselbe Ort.',
    tilt: 'Kippen braucht Positiv und Negativ in Deckung; diese Platte hat kein solches Paar.',
    apart: (name, why) =>
      `„${name}“ lässt sich nicht unter eine Trennlinie legen: ${why ?? 'nicht ausgerichtet'}.`,
    lamp: 'Lampe braucht Aufnahmen unter vielen Lampen; diese Platte hat keine.',
    range: 'Umfang braucht eine vereinte Belichtungsreihe; diese Platte hat keine.',
    difference:
      'Unterschied braucht zwei Sitzungen in Deckung; diese Platte hat kein solches Paar.',
  },

  tilt: {
    noPair: 'Es gibt kein Paar in Deckung.',
    beingRead: 'er wird gerade bestimmt',
    small: 'Die kleinen Bilder konnten nicht gelesen werden.',
    pressed: 'Die gedrückte Stelle',
    inSight: 'Der Ausschnitt',
    reading: {
      'reads positive': 'erscheint positiv',
      turning: 'kippt gerade',
      'reads negative': 'erscheint negativ',
    },
    now: (what, reading, turns) => `${what} ${reading}; ${turns}.`,
    unread: (what, reason) => `${what} ist nicht zu bestimmen: ${reason}.`,
    noTurn: (reason) => `ohne Kipppunkt: ${reason}`,
    notHere: 'in diesem Raum kippt sie nicht',
    turnsAt: (degrees) => `Kipppunkt bei ${degrees}`,
    unknown: (reason) => `Der Kipppunkt ist nicht bekannt: ${reason}.`,
    none: (reason) => `Diese Platte hat keinen Kipppunkt: ${reason}.`,
    never: 'In diesem Raum wird der Spiegel nie hell genug: die Platte kippt nicht.',
    at: (degrees) =>
      `Lichter und Schatten sind bei ${degrees} gleich hell: der Kipppunkt dieser Platte.`,
    reasons: {
      'the positive has no tones to compare here':
        'das Positiv hat hier keine Tonwerte zum Vergleichen',
      'the negative does not reverse the tones here':
        'das Negativ kehrt die Tonwerte hier nicht um',
      'the two pictures differ in size': 'die beiden Bilder sind verschieden groß',
      'fewer than 100 samples lie in it': 'weniger als 100 Messpunkte liegen darin',
    },
  },

  device: {
    stopped: 'Die Platte folgt diesem Gerät nicht mehr.',
    lessMotion:
      'Dieses Gerät wünscht weniger Bewegung, seine Neigung wird daher nicht genutzt. Nehmen Sie das Lineal.',
    silent: 'Dieses Gerät sagt nicht, wie es gehalten wird.',
    denied: 'Die Erlaubnis wurde nicht erteilt.',
    follows:
      'Die Platte folgt diesem Gerät: kippen Sie es zu sich oder von sich weg. Noch einmal drücken beendet es.',
  },

  lamp: {
    none: 'Diese Platte hat keine Aufnahmen unter vielen Lampen.',
    from: (bearing) => sides[Math.round(bearing / 45) % 8],
    place: (bearing, height) => `Azimut ${bearing}, ${height} über der Platte`,
    height: (degrees) => `${degrees} Grad über der Platte`,
    bearing: (degrees, from) => `${degrees} Grad, ${from}`,
    stands: (place, from) => `Die Lampe: ${place}, ${from}.`,
    frame: (n, place) => `Aufnahme ${n}, wie sie gemacht wurde; Lampe: ${place}.`,
    frameKept: (n, place) =>
      `Lampe der Aufnahme ${n}: ${place}; die Aufnahme selbst ist nicht veröffentlicht, dies ist die Berechnung an ihrer Stelle.`,
    relief: (times) =>
      `Relief: die Oberfläche allein, wie matt; Neigungen sind ${times === null ? 'steiler' : `${times}-mal so steil`} gezeichnet.`,
    slope: (ends) =>
      `Neigung: Weiß steigt zur Lampe an, Schwarz fällt ab, eben ist mittleres Grau${ends === null ? '' : `; die Enden sind Neigungen von ${ends}`}.`,
    gloss:
      'Glanz: was die hellsten Lampen zum matten Anteil hinzufügen, heller, wo eine Facette die Lampe ins Objektiv lenkt.',
    onlyFrames: (n, place) =>
      `Hier stehen nur die fotografierten Lampen zur Wahl: dies ist Aufnahme ${n}; Lampe: ${place}.`,
    nearest: (place) =>
      `So weit außen wurde keine Lampe fotografiert: gezeigt ist die nächste, die die fotografierten einschließen (${place}).`,
    fit: (lamps, apart, leftOut, nearest) =>
      `Berechnet aus ${lamps} Lampen im Abstand von ${apart}. Eine ausgelassene Aufnahme wird auf ${leftOut} vorhergesagt; ihre nächste Nachbarin an ihrer Stelle gibt ${nearest}.`,
    notFree:
      'Das ist zu wenig Gewinn gegenüber den Aufnahmen selbst, Lampen dazwischen stehen daher nicht zur Wahl.',
    clipped: (share) =>
      `${share} der Platte war in mindestens einer Aufnahme übersteuert; dort war das Glitzern heller als gezeigt.`,
    surface: (share) =>
      `Relief, Neigung und Glanz folgen einer angepassten matten Oberfläche, die ${share} ihres Lichts unerklärt lässt.`,
  },

  range: {
    none: 'Diese Platte hat keine vereinte Belichtungsreihe.',
    stops: (number) => `${number} Blenden`,
    asRendered: 'für den Bildschirm',
    white: (light) => `Licht ${light} ist weiß`,
    oneExposure: (seconds) =>
      `Wie eine einzelne Belichtung von ${seconds}: was heller ist als ihr Weiß, ist übersteuert.`,
    rendered:
      'Für den Bildschirm: der weite Umfang ist zusammengedrückt, Helligkeit ist daher nicht proportional zum Licht.',
    merged: (stops) =>
      `Vereintes Licht bei ${stops}: auf diesem Bildschirm ist Helligkeit proportional zum Licht, und was über dem Weißpunkt liegt, ist übersteuert.`,
    note: (frames, shortest, longest, span) =>
      `Vereint aus ${frames} Belichtungen, ${shortest} bis ${longest}; vom Rauschen bis zum hellsten Licht ${span}.`,
    waiting: 'Licht des Ausschnitts in Blenden. Noch ist nichts angekommen.',
    histogram: 'Licht des Ausschnitts in Blenden; die Höhen sind Quadratwurzeln.',
    above: (percent) =>
      percent === null
        ? 'Nichts liegt über dem Weißpunkt.'
        : `${percent} liegen über dem Weißpunkt.`,
  },

  looks: { step: (n, of) => `${n} von ${of}` },

  turning: {
    eye: 'Auge',
    plate: 'Platte',
    lamp: 'Lampe',
    dark: 'dunkle Wand',
    bright: { dark: 'dämmriger Raum', window: 'helles Fenster', bright: 'heller Raum' },
    looks: 'hierhin blickt der Spiegel',
    tilt: (degrees) => `Platte um ${degrees} gekippt, die Linie des Spiegels um das Doppelte.`,
    title: (degrees) =>
      `Schnitt: ein Auge vor einer um ${degrees} gekippten Platte, eine Lampe an der Seite, eine dunkle Wand hinter dem Auge und ein helles Fenster darüber.`,
    scattered: 'von der Lampe, vom Silber gestreut',
    mirrored: 'aus dem Raum, über den Spiegel',
  },
};
