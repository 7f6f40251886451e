/** Die Wörter des Planers auf Deutsch: auf seiner Seite und im Browser. */
import type { PlannerWords } from '../en/planner.ts';
import { plural } from '../locale.ts';
import { drawings } from './drawings.ts';
import { planned } from './planned.ts';

const many = plural('de');

export const planner: PlannerWords = {
  title: 'Aufbauplaner',
  lead: 'Vor dem Auslösen: wo Lampe, Maske, Glas und Leuchtfläche stehen müssen, damit die Platte nur sieht, was sie soll.',
  example:
    'Ein gerechnetes Beispiel: eine Halbplatte unter einer Kamera mit 100-mm-Objektiv. Ändern Sie eine Zahl, und der Rest folgt; nichts verlässt diese Seite.',
  exampleAlone: 'Ohne Skripte zeigt diese Seite das Beispiel und die Formeln.',
  inputs: 'Was vorhanden ist',
  results: 'Was daraus folgt',
  drawingsTitle: 'Die Aufbauten, maßstäblich',
  warnings: 'Zuerst anzusehen',
  noWarnings: 'Nichts zu beanstanden.',
  warningsCount: (count) =>
    count === 0
      ? 'Nichts zu beanstanden.'
      : many(count, { one: 'Eine Warnung.', other: `${count} Warnungen.` }),
  formula: 'Formel und Quelle',
  sheet: 'Aufbaublatt',
  sheetNote: 'Drucken Sie diese Seite: ein Blatt mit Zahlen und Vorsichtsmaßnahmen.',
  print: 'Das Aufbaublatt drucken',
  cautionsTitle: 'Vorsicht',
  setups: 'Für sitting.yaml',
  figure: 'Größe',
  value: 'Wert',
  faulty: (fields) => `Außerhalb der Grenzen: ${fields.join(', ')}.`,
  technique: 'Wie es gemacht wird',

  groups: {
    plate: 'Die Platte',
    camera: 'Kamera und Objektiv',
    lamp: 'Seitenlampe',
    raking: 'Streiflicht',
    axial: 'Axiales Licht',
    series: 'Reihen und Licht',
  },

  fields: {
    plateWidth: 'Breite, wie die Kamera sie sieht',
    plateHeight: 'Höhe',
    warp: 'Größte Neigung der Oberfläche',
    depth: 'Höchste über tiefster Stelle',
    focalLength: 'Brennweite',
    cameraDistance: 'Objektiv bis Platte',
    lensFront: 'Durchmesser der Objektivfront',
    pixelPitch: 'Pixelabstand des Sensors',
    sensorLong: 'Pixel, lange Seite',
    sensorShort: 'Pixel, kurze Seite',
    iso: 'ISO-Empfindlichkeit',
    lampBearing: 'Azimut, von der Oberkante im Uhrzeigersinn',
    lampHeight: 'Höhe über der Platte',
    lampDistance: 'Lampe bis Plattenmitte',
    lampSize: 'Breite ihrer Fläche oder des Diffusors',
    reliefSlope: 'Neigung, die sichtbar werden soll',
    rakingDistance: 'Streiflampe bis Plattenmitte',
    glassIndex: 'Brechzahl des Glases',
    glassThickness: 'Dicke des Glases',
    panelDistance: 'Platte bis Leuchtfläche, entlang des Lichts',
    rangeStops: 'Zu fassender Umfang',
    lightCount: 'Orte der Lampe',
    focusLux: 'Licht beim Scharfstellen',
    focusMinutes: 'Dauer des Scharfstellens',
  },

  units: {
    stops: 'Blenden',
    pixelsPerMillimetre: 'px je mm',
    linePairs: 'Linienpaare je mm',
  },

  sections: {
    camera: 'Kamera und Blende',
    dark: 'Dunkle Umgebung für das Positiv',
    lamp: 'Seitenlampe',
    raking: 'Streiflicht',
    axial: 'Axiales Licht über ein Glas',
    bracket: 'Belichtungsreihe',
    lights: 'Viele Lampen',
    dose: 'Licht, das die Platte empfängt',
  },

  setupNames: {
    normal: 'Seitenlampe, dunkle Umgebung',
    raking: 'Streiflicht',
    axial: 'axiales Licht über ein Glas',
  },

  cautions: [
    'Die Bildseite nie berühren oder wischen: schon ein Wattestäbchen hinterlässt Kratzer.',
    'Eine versiegelte Montierung nicht ohne Fotorestauratorin oder Fotorestaurator öffnen. Altes Glas und alte Verklebung erhalten.',
    'Tränendes oder gebrochenes Glas: aufhören, nicht wischen, Restaurierung rufen. Kanten sind scharf.',
    'Im Bild ist Quecksilber, von alter Reinigung kann Cyanid bleiben: Nitrilhandschuhe, frische Luft, keine Wärme; Hände waschen.',
    'Licht begrenzen: Lampen zwischen den Belichtungen aus, kein Ultraviolett, insgesamt höchstens 2 °C Erwärmung. Die Dosis notieren.',
    'Glas, Arme und Kabel so sichern, dass nichts auf die Platte fallen kann; das Glas wegnehmen, bevor man nach ihr greift.',
    'Lampen werden heiß. Blitzgeräte halten auch ausgeschaltet eine gefährliche Ladung; Menschen warnen, die auf Blitze empfindlich sind.',
    'Örtliche Regeln befolgen, Ultraviolett und Behandlung den Ausgebildeten und Befugten überlassen.',
  ],

  drawings,
  ...planned,
};
