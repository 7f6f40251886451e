/** Ce que la visionneuse dit dans le navigateur, en français. */
import type { ViewerWords } from '../en/viewer.ts';
import { tools } from './tools.ts';

const sides = [
  'du haut',
  'd’en haut à droite',
  'de la droite',
  'd’en bas à droite',
  'du bas',
  'd’en bas à gauche',
  'de la gauche',
  'd’en haut à gauche',
];

export const viewer: ViewerWords = {
  ...tools,
  faults: {
    pictures: 'Les images n’ont pas pu être ouvertes.',
    picture: 'L’image n’a pas pu être lue.',
    part: 'Une partie de l’image n’a pas pu être chargée.',
    offline: 'L’image n’a pas pu être chargée : pas de connexion.',
    answer: (status, address) => `L’image n’a pas pu être chargée : ${status} à ${address}.`,
    notPicture: (address) => `Ce qui est venu de ${address} ne décrit pas une image.`,
    dataOffline: 'Les données de cette vue n’ont pas pu être chargées : pas de connexion.',
    dataAnswer: (status, address) =>
      `Les données de cette vue n’ont pas pu être chargées : ${status} à ${address}.`,
    notData: (address) => `Ce qui est venu de ${address} ne décrit pas des plans de données.`,
    noPixels: 'Ce navigateur ne laisse pas lire les pixels.',
    noDrawing: 'Ce navigateur ne laisse pas dessiner d’images.',
    noScreen: 'Ce navigateur ne permet pas le plein écran ici.',
    otherPlate: 'Ce que l’on sait de l’autre plaque n’a pas pu être chargé.',
    noPlate: (slug) => `Il n’y a pas de plaque « ${slug} » à montrer à côté de celle-ci.`,
  },

  surface: {
    name: (title, n) =>
      `${title} : ${['', 'deuxième ', 'troisième '][n]}image. Les flèches la déplacent, plus et moins changent sa taille, 0 la montre entière.`,
    plainTilt:
      'Ce navigateur dessine sans shaders : Incliner est montré comme un simple fondu, ce que la lumière ne fait pas.',
    plainMode:
      'Ce navigateur dessine sans shaders, dont cette façon de regarder a besoin ; l’image est montrée telle quelle.',
  },

  stills: {
    plain:
      'Ce navigateur ne peut pas mêler lui-même les deux lectures : Incliner va par étapes mêlées d’avance, en lumière linéaire.',
    step: (held, n, count) => `${held} (étape ${n} sur ${count})`,
    title: 'Entre les deux lectures',
    alternative: (title, degrees) => `${title}, inclinée de ${degrees}`,
  },

  caption: {
    tilt: (degrees) => `Positif et négatif additionnés en lumière linéaire, inclinaison ${degrees}`,
    still: (degrees) => `Positif et négatif additionnés d’avance, inclinaison ${degrees}`,
    fade: 'Positif et négatif en simple fondu',
    relief: 'Relief de la surface, dessiné d’après ses pentes',
    slope: 'Pente de la surface vers la lampe',
    gloss: 'Brillance de la surface',
    frame: (n, of) => `Image ${n} sur ${of}, telle qu’elle a été prise`,
    lamp: (place, photographs) =>
      `Sous une lampe : ${place}, calculé d’après ${photographs} photographies`,
    rendered: 'Poses fusionnées, rendu pour l’écran',
    merged: (stops) => `Poses fusionnées, lumière à ${stops}`,
    exposure: (seconds) => `Poses fusionnées, comme une seule de ${seconds} le montrerait`,
  },

  picture: {
    waiting:
      'Des parties de l’image se font attendre : la connexion est lente. Ce qui est là peut déjà être déplacé et tourné.',
    across: (percent) => `à ${percent} de la largeur`,
    degrees: (degrees) => `${degrees} degrés`,
    turned:
      'Gauche et droite échangées : écritures et boutons sont comme devant l’appareil. La plaque elle-même les montre à l’envers.',
    unturned: 'Comme la plaque se présente : gauche et droite comme sur l’objet.',
    noScale: 'échelle inconnue : aucune longueur n’est montrée',
    noFrame: 'cette image n’est pas dans le cadre de la plaque',
    sameScale:
      'Les deux plaques sont montrées à la même échelle : un millimètre est aussi long dans l’une que dans l’autre.',
    notSameScale:
      'L’échelle de l’une des deux n’est pas connue : elles ne sont pas montrées à la même échelle.',
  },

  address: {
    noView: (id) => `Cette plaque n’a plus de vue « ${id} ».`,
    noSpot: (id) => `Cette plaque n’a plus de repère « ${id} ».`,
    changed: 'L’image a changé depuis que cette adresse a été faite ; le même endroit est montré.',
    tilt: 'Incliner demande un positif et un négatif superposés ; cette plaque n’a pas de telle paire.',
    apart: (name, why) =>
      `« ${name} » ne peut pas être posée sous une séparation : ${why ?? 'non superposée'}.`,
    lamp: 'Lampe demande une série d’images sous plusieurs lampes ; cette plaque n’en a pas.',
    range: 'Étendue demande une série de poses fusionnée ; cette plaque n’en a pas.',
    difference:
      'Différence demande deux séances superposées ; cette plaque n’a pas de telle paire.',
  },

  tilt: {
    noPair: 'Il n’y a pas de paire superposée.',
    beingRead: 'elle est en cours de lecture',
    small: 'Les petites images n’ont pas pu être lues.',
    pressed: 'L’endroit que vous avez touché',
    inSight: 'Ce qui est visible',
    reading: {
      'reads positive': 'se lit en positif',
      turning: 'est en train de basculer',
      'reads negative': 'se lit en négatif',
    },
    now: (what, reading, turns) => `${what} ${reading} ; ${turns}.`,
    unread: (what, reason) => `${what} ne peut pas être lu : ${reason}.`,
    noTurn: (reason) => `sans point de bascule : ${reason}`,
    notHere: 'ne bascule pas dans cette pièce',
    turnsAt: (degrees) => `bascule à ${degrees}`,
    unknown: (reason) => `Le point de bascule n’est pas connu : ${reason}.`,
    none: (reason) => `Cette plaque n’a pas de point de bascule : ${reason}.`,
    never: 'Dans cette pièce, le miroir ne devient jamais assez clair : la plaque ne bascule pas.',
    at: (degrees) =>
      `Clairs et ombres sont également lumineux à ${degrees} : le point de bascule de cette plaque.`,
    reasons: {
      'the positive has no tones to compare here': 'le positif n’a pas ici de tons à comparer',
      'the negative does not reverse the tones here': 'le négatif n’inverse pas ici les tons',
      'the two pictures differ in size': 'les deux images n’ont pas la même taille',
      'fewer than 100 samples lie in it': 'il s’y trouve moins de 100 échantillons',
    },
  },

  device: {
    stopped: 'La plaque ne suit plus cet appareil.',
    lessMotion:
      'Cet appareil demande moins de mouvement : son inclinaison n’est pas utilisée. Servez-vous de la ligne graduée.',
    silent: 'Cet appareil ne dit pas comment il est tenu.',
    denied: 'L’autorisation n’a pas été donnée.',
    follows:
      'La plaque suit cet appareil : inclinez-le vers vous ou loin de vous. Appuyez encore pour arrêter.',
  },

  lamp: {
    none: 'Cette plaque n’a pas de série d’images sous plusieurs lampes.',
    from: (bearing) => `lumière venant ${sides[Math.round(bearing / 45) % 8]}`,
    place: (bearing, height) => `azimut ${bearing}, ${height} au-dessus de la plaque`,
    height: (degrees) => `${degrees} degrés au-dessus de la plaque`,
    bearing: (degrees, from) => `${degrees} degrés, ${from}`,
    stands: (place, from) => `Lampe : ${place}, ${from}.`,
    frame: (n, place) => `Image ${n} telle qu’elle a été prise ; lampe : ${place}.`,
    frameKept: (n, place) =>
      `Lampe de l’image ${n} : ${place} ; l’image elle-même n’est pas publiée, ceci est donc le calcul à sa place.`,
    relief: (times) =>
      `Relief : la surface seule, comme mate ; les pentes sont dessinées ${times === null ? 'plus' : `${times} fois plus`} raides.`,
    slope: (ends) =>
      `Pente : le blanc monte vers la lampe, le noir descend, le plat est gris moyen${ends === null ? '' : ` ; les extrêmes sont des pentes de ${ends}`}.`,
    gloss:
      'Brillance : ce que les lampes les plus vives ajoutent à la part mate, plus clair où une facette renvoie la lampe vers l’objectif.',
    onlyFrames: (n, place) =>
      `Seules les lampes photographiées sont proposées ici : voici l’image ${n} ; lampe : ${place}.`,
    nearest: (place) =>
      `Aucune lampe n’a été photographiée si loin : la plaque est montrée sous la plus proche que les lampes prises encadrent (${place}).`,
    fit: (lamps, apart, leftOut, nearest) =>
      `Calculé d’après ${lamps} lampes, distantes de ${apart}. Une image laissée de côté est prédite à ${leftOut} ; sa plus proche voisine à sa place donne ${nearest}.`,
    notFree:
      'C’est trop peu gagner sur les images elles-mêmes : les lampes intermédiaires ne sont pas proposées.',
    clipped: (share) =>
      `${share} de la plaque était écrêté dans au moins une image ; le reflet y était plus vif qu’il n’est montré.`,
    surface: (share) =>
      `Relief, pente et brillance viennent d’une surface mate ajustée, qui laisse ${share} de sa lumière sans explication.`,
  },

  range: {
    none: 'Cette plaque n’a pas de série de poses fusionnée.',
    stops: (number) => `${number} diaphragmes`,
    asRendered: 'rendu pour l’écran',
    white: (light) => `la lumière ${light} est blanche`,
    oneExposure: (seconds) =>
      `Comme une seule pose de ${seconds} le montrerait : ce qui dépasse son blanc est écrêté.`,
    rendered:
      'Rendu pour l’écran : la grande étendue est resserrée, la clarté n’est donc pas proportionnelle à la lumière.',
    merged: (stops) =>
      `Lumière fusionnée à ${stops} : sur cet écran, la clarté est proportionnelle à la lumière, et ce qui dépasse le point blanc est écrêté.`,
    note: (frames, shortest, longest, span) =>
      `Fusionné de ${frames} poses, de ${shortest} à ${longest} ; du bruit à la lumière la plus vive, ${span}.`,
    waiting: 'Lumière de ce qui est visible, en diaphragmes. Rien n’est encore arrivé.',
    histogram:
      'Lumière de ce qui est visible, en diaphragmes ; les hauteurs sont des racines carrées.',
    above: (percent) =>
      percent === null ? 'Rien ne dépasse le point blanc.' : `${percent} dépasse le point blanc.`,
  },

  looks: { step: (n, of) => `${n} sur ${of}` },

  turning: {
    eye: 'œil',
    plate: 'plaque',
    lamp: 'lampe',
    dark: 'mur sombre',
    bright: { dark: 'pièce obscure', window: 'fenêtre claire', bright: 'pièce claire' },
    looks: 'le miroir regarde ici',
    tilt: (degrees) => `Plaque inclinée de ${degrees}, la ligne du miroir du double.`,
    title: (degrees) =>
      `Coupe : un œil devant une plaque inclinée de ${degrees}, une lampe de côté, un mur sombre derrière l’œil et une fenêtre claire au-dessus.`,
    scattered: 'de la lampe, diffusé par l’argent',
    mirrored: 'de la pièce, par le miroir',
  },
};
