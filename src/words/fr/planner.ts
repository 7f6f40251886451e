/** Les mots du planificateur en français : sur sa page et dans le navigateur. */
import type { PlannerWords } from '../en/planner.ts';
import { plural } from '../locale.ts';
import { drawings } from './drawings.ts';
import { planned } from './planned.ts';

const many = plural('fr');

export const planner: PlannerWords = {
  title: 'Préparation des éclairages',
  lead: 'Avant le déclic : où placer lampe, cache, verre et panneau pour que la plaque ne voie que ce qu’elle doit.',
  example:
    'Un exemple : une demi-plaque sous un appareil à objectif de 100 mm. Changez un chiffre et le reste suit ; rien ne quitte cette page.',
  exampleAlone: 'Sans script, cette page montre l’exemple et les formules.',
  inputs: 'Ce dont on dispose',
  results: 'Ce qui en découle',
  drawingsTitle: 'Les éclairages, à l’échelle',
  warnings: 'À regarder d’abord',
  noWarnings: 'Rien à signaler.',
  warningsCount: (count) =>
    count === 0
      ? 'Rien à signaler.'
      : many(count, { one: 'Un avertissement.', other: `${count} avertissements.` }),
  formula: 'Formule et source',
  sheet: 'Feuille d’éclairage',
  sheetNote: 'Imprimez cette page : une feuille avec les chiffres et les précautions.',
  print: 'Imprimer la feuille d’éclairage',
  cautionsTitle: 'Précautions',
  setups: 'Pour sitting.yaml',
  figure: 'Grandeur',
  value: 'Valeur',
  faulty: (fields) => `Hors de ses limites : ${fields.join(', ')}.`,
  technique: 'Comment on fait',

  groups: {
    plate: 'La plaque',
    camera: 'Appareil et objectif',
    lamp: 'Lampe latérale',
    raking: 'Lumière rasante',
    axial: 'Lumière axiale',
    series: 'Séries et lumière',
  },

  fields: {
    plateWidth: 'Largeur vue par l’appareil',
    plateHeight: 'Hauteur',
    warp: 'Plus forte inclinaison de la surface',
    depth: 'Du point le plus bas au plus haut',
    focalLength: 'Focale',
    cameraDistance: 'De l’objectif à la plaque',
    lensFront: 'Diamètre de la face de l’objectif',
    pixelPitch: 'Pas du capteur',
    sensorLong: 'Pixels, grand côté',
    sensorShort: 'Pixels, petit côté',
    iso: 'Sensibilité ISO',
    lampBearing: 'Azimut, depuis le bord supérieur, sens horaire',
    lampHeight: 'Hauteur au-dessus de la plaque',
    lampDistance: 'De la lampe au milieu de la plaque',
    lampSize: 'Largeur de sa face ou du diffuseur',
    reliefSlope: 'Pente qui doit se voir',
    rakingDistance: 'De la lampe rasante au milieu de la plaque',
    glassIndex: 'Indice du verre',
    glassThickness: 'Épaisseur du verre',
    panelDistance: 'De la plaque au panneau, le long du rayon',
    rangeStops: 'Étendue à contenir',
    lightCount: 'Places de la lampe',
    focusLux: 'Lumière de mise au point',
    focusMinutes: 'Durée de mise au point',
  },

  units: {
    stops: 'diaph.',
    pixelsPerMillimetre: 'px par mm',
    linePairs: 'paires de lignes par mm',
  },

  sections: {
    camera: 'Appareil et ouverture',
    dark: 'Entourage sombre pour le positif',
    lamp: 'Lampe latérale',
    raking: 'Lumière rasante',
    axial: 'Lumière axiale par un verre',
    bracket: 'Série de poses',
    lights: 'Lampes multiples',
    dose: 'Lumière que reçoit la plaque',
  },

  setupNames: {
    normal: 'lampe latérale, entourage sombre',
    raking: 'lumière rasante',
    axial: 'lumière axiale par un verre',
  },

  cautions: [
    'Ne jamais toucher ni essuyer la face image : même un coton laisse une rayure.',
    'Ne pas ouvrir un ensemble scellé sans un restaurateur de photographies. Garder verre et scellement anciens.',
    'Verre suintant ou cassé : s’arrêter, ne pas essuyer, appeler un restaurateur. Les bords coupent.',
    'L’image contient du mercure, un ancien nettoyage a pu laisser du cyanure : gants de nitrile, air frais, pas de chaleur ; se laver les mains.',
    'Limiter la lumière : lampes éteintes entre les poses, pas d’ultraviolet, 2 °C d’échauffement au plus en tout. Noter la dose.',
    'Fixer verre, bras et câbles pour que rien ne tombe sur la plaque ; ôter le verre avant d’y porter la main.',
    'Les lampes chauffent. Les flashs gardent une charge dangereuse une fois éteints ; prévenir les personnes sensibles aux éclairs.',
    'Suivre les règles locales, et laisser ultraviolet et traitements aux personnes formées et habilitées.',
  ],

  drawings,
  ...planned,
};
