/** Ce que disent la forme imprimée d'une plaque et le catalogue imprimé, en français. */
import type { PrintWords } from '../en/print.ts';

export const print: PrintWords = {
  trueSize: 'En grandeur réelle : un millimètre sur ce papier est un millimètre sur la plaque.',
  ratio: (part) => `À ${part} de la grandeur réelle.`,
  unknownSize: 'Non en grandeur réelle : l’échelle des images n’est pas connue.',
  bar: (length) => `${length} sur la plaque`,
  covered: 'Couverte, et laissée couverte sur le papier :',
  title: 'Catalogue à imprimer',
  lead: 'Les plaques de cette exposition pour le papier, chacune avec ses deux lectures, sa notice et son histoire.',
  how: 'Pour le faire : npm run catalogue, dans le dossier du programme de l’exposition. Il prend les plaques qu’on lui nomme, ou toutes.',
  of: 'Un catalogue de plaques',
  introduction: 'Introduction',
  contents: 'Plaques de ce catalogue',
  colophon: 'À propos de ce catalogue',
  sizes:
    'Là où une plaque le dit, ses images sont en grandeur réelle. Cela vaut si les pages sont imprimées à 100 %, sans ajustement au papier ; mesurez l’échelle sous les images pour en être sûr.',
  pictures:
    'Chaque image a été faite de photographies de la plaque, comme sa propre page le dit. Positif et négatif sont la même plaque sous des lumières différentes. Couleurs et tons sur papier ne sont ni ceux d’un écran, ni ceux de la plaque.',
  left: 'Les images couvertes dans l’exposition ou qui en sont retirées ne sont pas dans ce catalogue.',
  rights: 'Droits',
  address: 'L’exposition',
  write: 'Écrire à',
  program: (version) => `Fait avec Mirrorleaf ${version}.`,
  printed: 'Assemblé le',
  failed: (page) => `${page} n’a pas pu être lu : le catalogue n’est pas complet.`,
};
