/** Die Wörter in den Zeichnungen der Aufbauten und den kleinen Karten, auf Deutsch. */
import { plural } from '../locale.ts';
import type { DrawingWords } from '../en/drawings.ts';

const many = plural('de');

export const drawings: DrawingWords = {
  plan: 'Von oben, maßstäblich',
  section: 'Von der Seite, maßstäblich',
  planTitle: (what) => `Der Aufbau von oben, maßstäblich: ${what}.`,
  sectionTitle: (what) => `Der Aufbau von der Seite, maßstäblich: ${what}.`,
  plate: 'Platte',
  topEdge: 'Oberkante',
  lens: 'Objektiv',
  lensUnknown: 'Objektiv: Abstand nicht notiert',
  lamp: 'Lampe',
  lampAt: (distance) => (distance === null ? 'Lampe: Abstand nicht notiert' : `Lampe, ${distance}`),
  diffuser: 'Diffusor',
  lampsWithoutPlace: (count) =>
    many(count, { one: 'Lampe: Ort nicht notiert', other: `${count} Lampen: Ort nicht notiert` }),
  panel: (distance) =>
    distance === null
      ? 'Leuchtfläche: Abstand nicht notiert'
      : `Leuchtfläche, ${distance} Lichtweg`,
  panelUnknown: 'Leuchtfläche: Seite nicht notiert',
  panelSize: 'Leuchtfläche: Größe nicht notiert',
  glass: (thickness) => (thickness === null ? 'Glas: Dicke nicht notiert' : `Glas, ${thickness}`),
  glassHeight: 'seine Höhe ist nicht notiert',
  glassFree: 'in beliebiger Höhe über der Platte',
  surround: {
    dark: 'dunkel: alles, was der Spiegel zeigt',
    bright: 'hell: alles, was der Spiegel zeigt',
    mixed: 'teils dunkel, teils hell',
  },
  surroundUnknown: 'Umgebung nicht notiert',
  behind: 'Licht von hinten',
  plateUnknown: 'Platte: Größe nicht notiert',
  lamps: (count) => `${count} Orte der Lampe`,
  notToScale: 'Was grau gestrichelt ist, ist nicht notiert, und sein Ort nicht maßstäblich.',

  maps: {
    evenness: 'ohne Farbe bei 150 % des Medians, volle Farbe bei 50 %',
    clipping: 'volle Farbe ab 25 % eines Feldes',
    residual: (pixels) => `volle Farbe ab ${pixels}`,
    turning: 'ohne Farbe beim Halben, volle Farbe beim Doppelten des Werts der Platte',
  },
};
