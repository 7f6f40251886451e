/** Les phrases des traitements, en français ; `{1}` comme dans l’anglais. */
import type { RecordWords } from '../en/record.ts';

export const record: RecordWords = {
  one: 'Une photographie',
  frame: 'Vue {1} d’une série de {2}',
  base: '{1}. Elle définit le cadre auquel les autres sont ramenées.',
  part: '{1}, telle qu’elle a été prise ; elle ne montre qu’une petite partie de la base.',
  placed: '{1}, rééchantillonnée dans le cadre de la base ; écart de {2} px au plus.',
  bent: '{1}, rééchantillonnée dans le cadre de la base, avec une correction radiale pour une mise au point ou un objectif changés ; écart de {2} px au plus.',
  smaller:
    '{1}, rééchantillonnée dans le cadre de la base, à {2} % de ses pixels dans chaque sens, la prise de vue n’en ayant pas plus ; écart de {3} px de la base au plus.',
  smallerBent:
    '{1}, rééchantillonnée dans le cadre de la base, à {2} % de ses pixels dans chaque sens, la prise de vue n’en ayant pas plus, avec une correction radiale pour une mise au point ou un objectif changés ; écart de {3} px de la base au plus.',
  failed: '{1}, telle qu’elle a été prise ; elle n’a pas pu être alignée sur la base.',
  notMeasured:
    '{1}, telle qu’elle a été prise ; sa place dans le cadre de la base n’a pas été mesurée.',
  closeUps: 'Les vues rapprochées d’une mosaïque ont chacune leur place.',
  fast: 'rapide',
  weak: 'pour images faibles',
  controlPoints: 'points de contrôle',

  merged: '{1} poses fusionnées {2}, chacune pondérée par son bruit prévu.',
  mergedPlaced:
    '{1} poses fusionnées {2}, chacune pondérée par son bruit prévu, puis posées dans le cadre de la base.',
  mergedMoved:
    '{1} poses fusionnées {2}, chacune pondérée par son bruit prévu ; {3} d’entre elles avaient bougé et ont été décalées.',
  mergedMovedPlaced:
    '{1} poses fusionnées {2}, chacune pondérée par son bruit prévu ; {3} d’entre elles avaient bougé et ont été décalées ; le tout posé dans le cadre de la base.',
  byProfile: 'en lumière linéaire selon le profil des fichiers',
  byResponse: 'après que la réponse de l’appareil a été retrouvée d’après les vues elles-mêmes',
  byAssumption: 'en supposant la courbe sRGB, les fichiers n’ayant pas de profil',
  oneCurve: 'Montrées en un rendu à une seule courbe pour toute l’image.',
  localCurve:
    'Montrées en un rendu local : ce qui change lentement sur la plaque est comprimé, le détail fin est gardé.',
  rendering:
    'Un rendu pour l’œil : ses tons sont comprimés, et ne doivent être ni mesurés ni comparés à ceux d’une autre plaque. La lumière fusionnée est dans le fichier d’archive.',
  neighbourhood: 'Clair et sombre ne se comparent que dans un petit voisinage.',
  heldRange: 'Étendue tenue entre bruit et écrêtage',
  usedRange: 'Étendue de la plaque, du millième le plus sombre au plus clair',
  clippedEverywhere: 'Écrêté dans toutes les vues',
  belowNoise: 'Sous le bruit dans toutes les vues',
  exposureError: 'Plus grande erreur d’un écart noté',
  frameShift: 'Plus grand décalage entre vues',
  stops: 'diaphragmes',

  joined:
    '{1} vues rapprochées qui se recouvrent, assemblées : toutes ont été placées à la fois par {2} points communs à des voisines, équilibrées en ton et coupées où elles diffèrent le moins. Chacune est rééchantillonnée une seule fois, {3}.',
  onBase:
    'et se trouve dans le cadre de la base à {1} fois ses pixels, avec un écart de {2} px de la base au plus',
  ownFrame: 'et garde son propre cadre, n’ayant pu être posée sur la base',
  seams:
    'Les tons ont été équilibrés entre les vues rapprochées : ne comparez pas de clartés à travers un raccord. Prenez une seule vue rapprochée pour mesurer la lumière, et pour tout ce qui est plus fin que le résidu ci-dessous.',
  sharedPoints: 'Résidu médian des points communs',
  worstPair: 'Résidu de la pire paire',
  pairs: 'Paires qui concordent',
  of: 'sur {1}',
  seamStep: 'Saut de ton aux raccords, 95e centile',
  seamStepLargest: 'Saut de ton aux raccords, le plus grand',
  covered: 'Part du cadre couverte',
  scale: 'Échelle',

  relit:
    'Composée de {1} photographies, une seule lampe en autant de places ; la lumière entre elles est interpolée en tons d’affichage.',
  foretoldBetter:
    'Une vue laissée de côté est prédite par les autres à {1} dB, soit {2} dB de mieux que par la vue la plus proche.',
  foretoldWorse:
    'Une vue laissée de côté est prédite par les autres à {1} dB, soit {2} dB de moins que par la vue la plus proche.',
  capturedOnly:
    'C’est trop peu pour montrer des lampes intermédiaires : seules celles qui ont été prises sont proposées.',
  glints:
    'Avec {1} lampes à {2}° l’une de l’autre, un éclat plus étroit peut tomber entre deux d’entre elles, où aucune vue ne l’a vu : il passe de l’une à l’autre en fondu et ne se déplace pas. Plus de lampes, ou un diffuseur aussi large que leur écart, le saisiraient.',
  relitCaution:
    'Ce n’est pas une photographie : n’y mesurez ni ton ni couleur, et vérifiez un éclat ou une rayure sur les vues prises.',
  slope:
    'Dérivée des mêmes photographies : de quel côté la surface penche et de combien, d’après la façon dont sa clarté suit la lampe. Le gris est plan ; la couleur dit de quel côté elle descend, sa force avec quelle pente.',
  relief:
    'Dérivée : les pentes seules, sous une lampe qui ne s’est jamais trouvée là, d’azimut {1}°, à {2}° au-dessus de la plaque, {3}. Les tons de l’image ont disparu.',
  exaggerated: 'exagérées {1} fois',
  notExaggerated: 'sans exagération',
  gloss:
    'Dérivée : combien les lampes les plus claires donnent de lumière de plus qu’une surface mate. Le clair est poli, rayé ou d’aspect mouillé ; le noir est mat.',
  shapeCaution:
    'Les pentes sont estimées d’après la lumière et ne mesurent pas une hauteur : un bord de ternissure ou un trait dessiné peut passer pour une marche, et les endroits écrêtés sont moins sûrs.',
  glossCaution:
    'Ce n’est pas une mesure de l’état : lignes de polissage, rayures et miroir nu brillent tous.',
  leftOut: 'Une vue prédite par les autres',
  nearest: 'La vue la plus proche à sa place',
  kept: 'Vues recomposées à partir des plans',
  spacing: 'Distance d’une lampe à la suivante',
  planes: 'Plans de données',
  clippedOnce: 'Pixels écrêtés dans une vue au moins',
  unexplained: 'Lumière que les pentes n’expliquent pas',
  strength: 'Force de la lampe d’une vue à l’autre, écart type',
  ball: 'Reflets ou contour de la bille par rapport à son cercle',

  raking:
    'Dérivée de {1} prises de vue en lumière rasante, ramenées à la même clarté : en chaque point, la plus claire d’entre elles moins la part commune à toutes. Ce que tous les azimuts montrent de même, l’image sur la plaque, disparaît ; ce qui répond à la lampe reste.',
  rakingCaution:
    'Ce n’est pas une carte des dommages : rayures, poussière, lignes de polissage et bords de ternissure s’y ressemblent, et ce qui est orienté vers toutes les lampes manque. Comparez avec les prises de vue.',
  rakingMedian: 'Lumière ajoutée par la lumière rasante, au milieu',
  rakingHigh: 'Lumière ajoutée par la lumière rasante, centième le plus clair',
  ofWhite: '% du blanc',
  colouring:
    'Dérivée de la vue sous une lampe latérale et de celle dans un champ uniforme : un film de ternissure colore de même ce que la plaque diffuse et ce qu’elle réfléchit, un pigment seulement ce qu’elle diffuse. Où les deux diffèrent, la couleur est laissée telle quelle ; où elles diffèrent peut-être, elle est plus pâle ; tout le reste est gris.',
  colouringCaution:
    'Ce n’est pas l’identification d’un pigment, ni la preuve qu’une couleur a été posée à la main : d’autres dépôts qui diffusent une lumière colorée ont le même aspect, et un colorant transparent échappe. Où la ternissure est forte ou la plaque trop sombre, rien n’est dit.',
  colouredArea: 'Surface colorée',
  uncertainty: 'Son incertitude, en plus ou en moins',
  colouredMost: 'Surface colorée, au plus (aucune n’est sûre)',
  colouredShare: 'Part de la plaque qui est colorée',
  notJudged: 'Part de l’image où rien ne peut être dit, entourage compris',

  resolution: 'Pixels par pouce de plaque',
  statedScale: 'l’échelle indiquée',
  targetScale: 'l’échelle dans l’image',
  edgesScale: 'les bords de la plaque et ses dimensions notées',
  fromTarget: 'd’après une échelle dans l’image',
  fromEdges: 'd’après les bords de la plaque',
  asStated: 'telle qu’indiquée dans la séance',
  uncertaintyAssumed: '{1}, incertitude supposée',
  measuredFrom: 'mesurée {1}',
  sizeAlone:
    'inconnue : les dimensions de la plaque sont notées, mais non où se trouvent ses bords dans l’image',
  notKnown: 'inconnue',
  plateWidth: 'Largeur entre les bords de la plaque',
  plateHeight: 'Hauteur entre les bords de la plaque',
  edgesFound: 'bords trouvés dans l’image',
  clippedImage: 'Écrêté sur l’image',
  clippedEdge: 'Écrêté le long du bord de la plaque',
  insideEdges: 'à l’intérieur des bords de la plaque',
  wholePicture: 'toute l’image',
  blur: 'Flou des bords les plus nets',
  blurEdges: '{1} bords, ceux des rayures et de la poussière compris',
  extraBlur: 'Flou en plus de celui de « {1!} »',
  bothEdges: '{1} bords que les deux montrent',
  unevenness: 'Inégalité de la lumière',
  blankField: 'champ vide {1!} : du 5e au 95e centile, rapporté à la médiane',
  fallOff: 'Chute de la lumière sur la plaque',
  plateItself: 'la plaque elle-même, contre « {1!} » ; pas de champ vide',
  clippedMap: 'Part écrêtée de chaque champ, sur une vue d’ensemble de l’image.',
  blankMap: 'La lumière sur le champ vide {1!}, sans ses points chauds.',
};
