/** Les mots dans les dessins d'éclairages et les petites cartes, en français. */
import { plural } from '../locale.ts';
import type { DrawingWords } from '../en/drawings.ts';

const many = plural('fr');

export const drawings: DrawingWords = {
  plan: 'Vu d’en haut, à l’échelle',
  section: 'Vu de côté, à l’échelle',
  planTitle: (what) => `L’éclairage vu d’en haut, à l’échelle : ${what}.`,
  sectionTitle: (what) => `L’éclairage vu de côté, à l’échelle : ${what}.`,
  plate: 'plaque',
  topEdge: 'bord supérieur',
  lens: 'objectif',
  lensUnknown: 'objectif : distance non notée',
  lamp: 'lampe',
  lampAt: (distance) => (distance === null ? 'lampe : distance non notée' : `lampe, ${distance}`),
  diffuser: 'diffuseur',
  lampsWithoutPlace: (count) =>
    many(count, { one: 'lampe : place non notée', other: `${count} lampes : place non notée` }),
  panel: (distance) =>
    distance === null ? 'panneau : distance non notée' : `panneau, ${distance} le long du rayon`,
  panelUnknown: 'panneau : côté non noté',
  panelSize: 'panneau : taille non notée',
  glass: (thickness) =>
    thickness === null ? 'verre : épaisseur non notée' : `verre, ${thickness}`,
  glassHeight: 'sa hauteur n’est pas notée',
  glassFree: 'à une hauteur quelconque sur la plaque',
  surround: {
    dark: 'sombre : tout ce que montre le miroir',
    bright: 'clair : tout ce que montre le miroir',
    mixed: 'en partie sombre, en partie clair',
  },
  surroundUnknown: 'entourage non noté',
  behind: 'lumière de derrière',
  plateUnknown: 'plaque : taille non notée',
  lamps: (count) => `${count} places de la lampe`,
  notToScale: 'Ce qui est gris et tireté n’est pas noté, et sa place n’est pas à l’échelle.',

  maps: {
    evenness: 'sans encre à 150 % de la médiane, pleine encre à 50 %',
    clipping: 'pleine encre dès 25 % d’un champ',
    residual: (pixels) => `pleine encre dès ${pixels}`,
    turning: 'sans encre à la moitié, pleine encre au double de celui de la plaque',
  },
};
