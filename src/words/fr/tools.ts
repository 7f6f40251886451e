/** What the viewer's tools say in the reader's browser, in French. */
import { plural } from '../locale.ts';
import type { ToolWords } from '../en/tools.ts';
import { modes } from './modes.ts';

const many = plural('fr');

export const tools: ToolWords = {
  measure: {
    begin: {
      length: 'Touchez l’image aux deux bouts de ce que vous voulez mesurer.',
      angle: 'Touchez un bout, le sommet, puis l’autre bout.',
      area: 'Touchez les coins l’un après l’autre, puis « Fermer le contour ».',
      profile: 'Touchez les deux bouts de la ligne le long de laquelle vous voulez la luminance.',
    },
    inPixels: 'L’échelle de cette image n’est pas connue : les longueurs sont en pixels.',
    corners: (set) =>
      `${many(set, { one: `${set} coin est posé`, other: `${set} coins sont posés` })}. Touchez le suivant${set > 2 ? ', ou fermez le contour' : ''}.`,
    corner: 'Un bout est posé. Touchez le sommet.',
    otherEnd: 'Touchez l’autre bout.',
    secondEnd: 'Un bout est posé. Touchez l’autre.',
    threeCorners: 'Une aire demande au moins trois coins.',
    noArea: 'L’échelle de cette image n’est pas connue, l’aire non plus.',
    pixels: (number) => `${number} pixels ; l’échelle n’est pas connue`,
    uncertain: (value) => `${value} ; l’incertitude de l’échelle n’est pas connue`,
    standard: (value, uncertainty) => `${value} ± ${uncertainty} (incertitude type)`,
    profile: (length, view, low, high, factor) =>
      `${length}. Luminance de « ${view} » le long de la ligne, linéaire : de ${low} à ${high} du blanc${factor === 1 ? '' : `, lue à 1/${factor} de la taille`}.`,
    along: (unit) => `le long (${unit})`,
    luminance: 'luminance (linéaire 0 à 1)',
    inPixel: 'pixels',
    keptScreen: (number) =>
      `Gardé dans ce navigateur : ${number} pixels par millimètre sur cet écran.`,
    noActual: 'L’échelle de cette image n’est pas connue, sa grandeur réelle non plus.',
    tellScreen:
      'Dites d’abord la taille de cet écran : donnez à la ligne la largeur d’une carte bancaire.',
    actual: 'Montrée en grandeur réelle sur cet écran.',
    times: (times) => `Montrée ${times} fois plus grande que nature, sur cet écran.`,
  },

  spots: {
    begin: {
      rectangle: 'Touchez deux coins opposés sur l’image.',
      outline: 'Touchez les coins du contour l’un après l’autre, puis « Fermer le contour ».',
    },
    drawn: {
      rectangle: 'Le rectangle est tracé. Donnez-lui un titre et gardez-le.',
      outline: 'Le contour est tracé. Donnez-lui un titre et gardez-le.',
    },
    three: 'Un contour demande au moins trois coins.',
    unfinished: 'La forme n’est pas finie : touchez le reste, ou désactivez-la.',
    title: 'Donnez d’abord un titre au repère.',
    kept: 'Gardé dans ce navigateur seulement.',
    notKept: 'Ce navigateur ne garde rien ici.',
    taken: (fresh, all) =>
      many(fresh, {
        one: `${fresh} repère sur ${all} était nouveau et est gardé.`,
        other: `${fresh} repères sur ${all} étaient nouveaux et sont gardés.`,
      }),
    address: 'Adresse',
    addressOf: (title) => `Adresse du repère ${title}`,
    remove: (title) => `Retirer « ${title} »`,
    notJson: 'Ce fichier n’est pas du JSON : aucun repère n’a pu y être lu.',
    tooLarge: 'Ce fichier est plus grand que toute liste de repères : il n’a pas été lu.',
    nothing:
      'Ce fichier ne contient aucune annotation avec un rectangle ou un contour sur une vue de cette plaque.',
  },

  take: {
    making: 'L’image est en cours d’assemblage …',
    failed: 'L’image n’a pas pu être faite.',
    nothing: 'Rien de visible à emporter.',
    rights: (rights) => `Droits : ${rights}`,
    firstOnly: 'Seule la première image a été prise.',
    full: (width, height) => `Faite en pleine définition, ${width} sur ${height} pixels.`,
    smaller: (factor, width, height) =>
      `Faite à 1/${factor} de la pleine définition, ${width} sur ${height} pixels : le tout serait trop grand pour un navigateur.`,
  },

  cite: {
    copied: 'Copié.',
    marked: 'Les mots sont sélectionnés ; copiez-les au clavier ou par le menu.',
    and: ' et ',
    title: (title) => `« ${title} »`,
    modes,
    view: (mode, names) => `vue ${mode} (${names})`,
    region: (region) => `région ${region} en pixels du cadre de la plaque`,
    turned: 'gauche et droite échangées',
    picture: (digests, date) => `Image ${digests}, lue le ${date}.`,
  },
};
