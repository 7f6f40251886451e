/** Les mots dans le balisage de la visionneuse, en français : commandes, panneaux, noms des vues. */
import type { StageWords } from '../en/stage.ts';
import { modes } from './modes.ts';

export const stage: StageWords = {
  readings: {
    positive: 'Positif',
    negative: 'Négatif',
    mixed: 'Lecture mixte',
    none: null,
  },
  lights: {
    normal: 'lampe latérale',
    raking: 'lumière rasante',
    axial: 'lumière axiale',
    transmitted: 'lumière transmise',
    ultraviolet: 'ultraviolet',
    infrared: 'infrarouge',
    scan: 'numériseur',
    other: null,
  },
  made: {
    merge: 'poses fusionnées',
    relight: 'lampe que l’on déplace',
    mosaic: 'vues rapprochées assemblées',
    local: 'poses fusionnées, détails renforcés',
    slope: 'pente de la surface',
    relief: 'relief de la surface',
    gloss: 'brillance de la surface',
    adds: 'ce qu’ajoute la lumière rasante',
    colouring: 'coloriage à la main',
  },
  frame: {
    single: (n, of) => `photographie ${n} sur ${of}`,
    bracket: (n, of) => `pose ${n} sur ${of}`,
    lights: (n, of) => `lampe ${n} sur ${of}`,
    mosaic: (n, of) => `vue rapprochée ${n} sur ${of}`,
  },
  apart: 'elle n’a pas été posée sur les autres images',
  alternative: (title, view) => `${title} : ${view}.`,

  register: {
    none: 'Aucune paire de lectures de cette plaque n’est superposée ; on peut regarder ses images côte à côte.',
    one: 'Il y a une seule image de cette plaque.',
    inFrame: 'Les deux lectures se trouvent dans le cadre de la plaque.',
    within: (pixels, micrometres) =>
      `Les deux lectures se superposent à ${pixels} près${micrometres === null ? '' : ` (${micrometres})`}.`,
  },

  pixels: (size) => `(${size} pixels)`,
  ways: 'Façons de regarder',
  sizeAndTools: 'Taille et outils',
  modes,
  smaller: 'Plus petit',
  larger: 'Plus grand',
  whole: 'Plaque entière',
  tools: {
    move: 'Déplacer',
    measure: 'Mesurer',
    spots: 'Repères',
    looks: 'Visites guidées',
    take: 'Emporter',
    cite: 'Citer',
  },
  correct: 'Gauche à droite',
  screen: 'Plein écran',
  divider: 'Séparation',

  views: {
    view: 'Vue',
    first: 'Première',
    second: 'Seconde',
    swap: 'Échanger les côtés',
    turned: 'Tournée de',
    keeps: 'Reste fixe sur',
    onScreen: 'l’écran',
    onPlate: 'la plaque',
    notOffered: (names, why) =>
      names.length === 1
        ? `« ${names[0]} » n’est pas proposée ici : ${why}. On peut la voir dans Regarder et Côte à côte.`
        : `${names.length} vues ne sont pas proposées ici : ${why}. On peut les voir dans Regarder et Côte à côte.`,
    secondPlate: 'Seconde plaque',
    thisPlate: 'cette plaque',
    roughly: (names, why) =>
      names.length === 1
        ? `« ${names[0]} » n’est pas superposée aux autres (${why}) : les places ne correspondent qu’à peu près.`
        : `${names.length} vues ne sont pas superposées aux autres (${why}) : les places ne correspondent qu’à peu près.`,
    difference:
      'Entre les deux : gris moyen où rien n’a changé, plus clair où la seconde est plus claire, plus sombre où elle est plus sombre. Un dixième de l’échelle des tons est dessiné comme la moitié du gris.',
    differenceNote:
      'Un changement de lampe, de pose ou de superposition a l’air d’un changement de la plaque. Des contours doublés sont des images un peu décalées.',
  },

  tilt: {
    eye: 'œil',
    plate: 'plaque',
    tilt: 'Inclinaison',
    dark: 'face à l’ombre',
    bright: 'face à la clarté',
    less: 'Moins',
    more: 'Plus',
    turning: 'Au point de bascule',
    here: 'Lire ce qui est visible',
    room: 'Pièce',
    rooms: { dark: 'sombre', window: 'une fenêtre', bright: 'claire' },
    drag: 'Glisser déplace l’image',
    device: 'Suivre cet appareil',
    note: 'L’image sous la lampe et l’image dans le miroir sont additionnées en lumière linéaire, comme l’œil les verrait, et ramenées à une même clarté.',
  },

  lamp: {
    height: 'Hauteur de la lampe',
    bearing: 'Azimut de la lampe',
    plate: 'plaque',
    lens: 'objectif',
    bearingField: 'Azimut',
    heightField: 'Hauteur',
    drawn: 'Ce qui est dessiné',
    as: {
      lit: 'Éclairé',
      relief: 'Relief',
      slope: 'Pente',
      gloss: 'Brillance',
      frame: 'Image prise',
    },
    captured: 'Lampes photographiées',
    nearest: 'Lampe prise la plus proche',
    previous: 'Image précédente',
    next: 'Image suivante',
    note: 'Faites glisser la lampe le long du bord de la plaque et du quart de cercle, ou servez-vous des deux lignes graduées.',
  },

  range: {
    exposure: 'Exposition',
    white: 'Point blanc',
    drawn: 'Ce qui est dessiné',
    rendering: 'Rendu pour l’écran',
    merged: 'Lumière fusionnée',
    marks: 'Marquer ce qu’aucune image ne contient',
    frames: 'Comme une seule pose le montrerait',
    note: 'La série de poses contient plus de lumière qu’un écran n’en montre. Choisissez la part que l’on voit.',
  },

  move: {
    group: 'Déplacer l’image',
    left: 'À gauche',
    right: 'À droite',
    up: 'En haut',
    down: 'En bas',
  },

  measure: {
    group: 'Mesurer',
    kinds: {
      length: 'une longueur',
      angle: 'un angle',
      area: 'une aire',
      profile: 'la luminance le long d’une ligne',
    },
    middle: 'Poser un point au milieu de l’image',
    close: 'Fermer le contour',
    again: 'Recommencer',
    save: 'Enregistrer les chiffres en tableau',
    noScale: (from) => `Échelle : inconnue. ${from}`,
    scale: (value, uncertainty, from) =>
      `Échelle : ${value} pixels par millimètre${uncertainty === null ? '' : ` ± ${uncertainty}`} ; ${from}.`,
    actual: 'Grandeur réelle sur cet écran',
    card: (width) => `Donnez à la ligne la largeur d’une carte bancaire (${width})`,
    cardSet: 'Elle est aussi large',
    one: 'Grandeur réelle',
    ten: 'Dix fois',
  },

  spots: {
    group: 'Repères',
    none: 'Aucun repère n’est encore marqué sur cette plaque.',
    title: 'Titre d’un nouveau repère',
    note: 'Note',
    shape: 'Forme du nouveau repère',
    rectangle: 'Tracer un rectangle',
    outline: 'Tracer un contour',
    middle: 'Poser un point au milieu de l’image',
    close: 'Fermer le contour',
    mark: 'Garder la forme, ou ce qui est visible',
    save: 'Enregistrer mes repères dans un fichier',
    open: 'Ouvrir un fichier de repères',
    own: 'Vos repères restent dans ce navigateur ; rien n’est envoyé. Le fichier suit W3C Web Annotation.',
  },

  looks: {
    group: 'Visites guidées',
    look: 'Visite',
    back: 'Retour',
    next: 'Suite',
    again: 'Revoir cette étape',
    class: 'Grands caractères pour la classe',
  },

  take: {
    group: 'Emporter',
    png: 'Enregistrer ce qui est visible en PNG',
    tiff: 'L’enregistrer en TIFF',
    print: 'Imprimer ce qui est visible comme figure',
    note: 'En pleine définition, avec échelle, citation, crédit et droits sous l’image et inscrits dans le fichier. Un TIFF n’est pas comprimé : trois octets par pixel.',
  },

  cite: {
    group: 'Citer',
    citation: 'Ce qui est visible, pour une note',
    copy: 'Copier',
    embedding: 'Pour le montrer dans une page à vous, collez ceci dans la page',
    copyCode: 'Copier le code',
  },
};
