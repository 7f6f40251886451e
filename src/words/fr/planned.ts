/** Ce que le planificateur dit d’un plan, en français : chiffres, formules, avertissements. */
import type { PlannedWords } from '../en/planned.ts';

export const planned: PlannedWords = {
  figures: {
    magnification: 'Grandissement',
    scale: 'Pixels sur la plaque',
    resolution: 'La même chose en pixels par pouce',
    field: 'Partie du plan de la plaque dans l’image',
    aperture: 'Ouverture la plus nette pour cette profondeur',
    'depth-of-field': 'Profondeur à moins d’un pixel de flou',
    blur: 'Tous les flous ensemble, sur la plaque',
    'cut-off': 'Plus fine période que porte l’objectif',
    bellows: 'Pose allongée pour l’objectif tiré',
    'mirror-angle': 'Le miroir voit, de part et d’autre de l’axe',
    mask: 'Cache noir dans le plan de l’objectif',
    hole: 'Son trou, au plus',
    'hole-on-plate': 'Disque sombre que le trou laisse sur la plaque',
    'lamp-place': 'Azimut et hauteur',
    'excluded-from': 'Le miroir montre la lampe dès une hauteur de',
    clearance: 'La surface peut pencher de',
    'fall-off': 'Chute de lumière sur la plaque',
    'fall-off-two': 'La même avec une lampe égale en face',
    'level-distance': 'Distance pour un tiers de diaphragme',
    'raking-height': 'Hauteur de la lampe',
    'relief-height': 'Plus grande hauteur où la pente est d’un quart plus claire',
    'glint-slope': 'Les parois de cette pente brillent',
    'raking-bearings': 'Azimuts qui n’oublient aucune rayure',
    panel: 'Panneau, au moins',
    'panel-evenness': 'Sa lumière sur les particules chute de',
    'glass-loss': 'À ouvrir par rapport à la lumière sans verre',
    ghost: 'Image fantôme à côté de l’image',
    'ghost-pixels': 'La même en pixels',
    'ghost-strength': 'Force de l’image fantôme',
    polarised: 'Part polarisée de ce qui revient',
    polariser: 'Un polariseur sur l’objectif la change de',
    'frame-range': 'Une image contient',
    frames: 'Images',
    step: 'D’une image à l’autre',
    times: 'Temps, à partir d’un temps moyen de 1/4 s',
    held: 'La série contient',
    'ring-heights': 'Hauteurs des couronnes',
    'ring-counts': 'Places dans chacune',
    'light-distance': 'Distance de la lampe, constante, au moins',
    'light-distance-most': 'et au plus',
    ball: 'Boule brillante, diamètre au moins',
    'ball-precision': 'Direction de lampe pour un pixel sur elle',
    'dose-exposure': 'Une pose',
    'dose-focus': 'Mise au point',
    'dose-bracket': 'La série de poses',
    'dose-lights': 'La série de lampes',
    'dose-all': 'Toute la séance',
    'dose-display': 'Autant qu’une exposition à 50 lx pendant',
    'flash-guide': 'Un flash à la place de la lampe : nombre guide (m, ISO 100)',
  },

  formulas: {
    camera: [
      'm = f/(u − f) ; pixels par mm = m/pas ; profondeur 2 N c (1 + m)/m² ; pose (1 + m)². Lentille mince.',
      'Ouverture : plus petite racine de la somme des carrés du défocus z m/(N (1 + m)), du premier anneau sombre 2,44 λ N (1 + m)/m et du pixel, λ = 550 nm (d’après Hansma, 1996, de mémoire), à partir de f/5,6, car un objectif est rarement net à pleine ouverture. Plus fine période m/(λ N (1 + m)).',
    ],
    dark: [
      'À une distance P, le miroir montre plaque × (D + P)/D + ouverture × P/D ; dans le plan de l’objectif (P = D), deux fois la plaque et l’ouverture. Demi-angle atan(e/D). Une inclinaison w tourne le rayon de 2 w. Loi de la réflexion.',
    ],
    lamp: [
      'La plaque montre la lampe là où sa normale partage l’angle entre lampe et objectif. La marge est la plus petite inclinaison où un endroit le fait, moins la moitié du rayon de la lampe.',
      'Lumière sur la plaque : z/d³ (inverse du carré et cosinus).',
    ],
    raking: [
      'Une paroi de pente s est sin(h + s)/sin h fois plus claire que le plat : cot h = (1 + C − cos s)/sin s pour un contraste C d’un quart. Une paroi brille à h = 90° − 2 s. Lambert ; loi de la réflexion.',
    ],
    axial: [
      'Fresnel à 45° pour les deux polarisations ; une lame réfléchit 2 r/(1 + r) et transmet (1 − r)/(1 + r). Ce qui revient est la moyenne des produits, non le produit des moyennes.',
      'Image fantôme : t sin 2i/√(n² − sin² i), force r². Panneau : comme l’entourage sombre, et un dixième. Uniformité : facteur de forme d’un rectangle (catalogue de Howell).',
    ],
    bracket: [
      'Une image contient de son écrêtage jusqu’à un rapport signal sur bruit de 10 : e/√(e + r²) = 10, avec 45 000 électrons et un bruit de lecture de 4, une hypothèse. Pas de 2 diaphragmes au plus, un tiers de diaphragme de réserve.',
    ],
    lights: [
      'Couronnes entre 15° et 65°, places en proportion de cos h. Lampe à 2,5 à 4 diagonales : pratique courante, sans source. Un pixel sur une boule de rayon r vaut 2/r de direction de lampe.',
    ],
    dose: [
      'Une pose juste : C N² (1 + m)²/ISO lux-secondes, C = 250, quel que soit le temps. 50 lx est la limite usuelle des objets les plus sensibles (CIE 157:2004, de mémoire) ; aucun chiffre pour ces plaques n’a été trouvé.',
      'Un flash donne la même dose en moins de temps : nombre guide = N (1 + m) d, loi de l’inverse du carré. Avec une lampe sur le secteur, prendre des centièmes de seconde entiers (50 Hz), ou un quart de seconde et plus.',
    ],
  },

  warningTexts: {
    'plate-too-large': ([w, h]) =>
      `La plaque n’entre pas : l’image contient ${w} × ${h} mm. Éloignez l’appareil, prenez une focale plus courte ou prévoyez une mosaïque.`,
    'resolution-low': ([ppi]) =>
      `${ppi} pixels par pouce, c’est moins que 600, le chiffre du plus haut niveau pour les tirages (FADGI 2016). Approchez, prenez une focale plus longue ou prévoyez une mosaïque.`,
    'depth-short': ([depth, needed]) =>
      `La profondeur à moins d’un pixel de flou est de ${depth} mm, la plaque demande ${needed} mm. Mettez-la de niveau, ou acceptez des coins plus doux.`,
    'blur-over-pixels': ([pixels]) =>
      `Même à la meilleure ouverture, les flous ensemble font ${pixels} pixels : plus de pixels que l’objectif ne peut remplir.`,
    'mask-large': ([w, h]) => `Le cache devrait faire ${w} × ${h} mm. Éloignez l’appareil.`,
    'lamp-in-mirror': ([height, limit]) =>
      `À ${height}°, la plaque montre la lampe à l’objectif. Placez-la sous ${limit}°, ou réduisez son diffuseur.`,
    'lamp-in-view': () => 'La lampe se trouve entre l’objectif et la plaque.',
    'lamp-uneven': ([stops]) =>
      `La lumière chute de ${stops} diaphragmes sur la plaque. Éloignez la lampe, ajoutez-en une en face, ou divisez par un champ uni.`,
    'relief-too-flat': ([slope, height]) =>
      `Une pente de ${slope}° ne ressort que sous ${height}°, où le bord même de la plaque fait de l’ombre. Cherchez-la plutôt en lumière axiale.`,
    'panel-large': ([w, h]) =>
      `Le panneau devrait faire ${w} × ${h} mm. Approchez-le, ou éloignez l’appareil.`,
    'glass-in-way': ([distance]) =>
      `${distance} mm ne laissent pas de place à une lame à 45° sur la plaque : c’est moins que sa longueur.`,
    'glass-thick': ([ghost]) =>
      `L’image fantôme est à ${ghost} mm de l’image. Un verre plus mince la rapproche ; un verre traité l’affaiblit.`,
    'bracket-long': ([seconds]) =>
      `La plus longue pose dure ${seconds} s. Donnez plus de lumière à toute la série, jamais une ouverture plus grande à une seule image.`,
    'ring-in-mirror': ([limit]) =>
      `Dès ${limit}°, les lampes se voient dans le miroir : ces images seront écrêtées.`,
    'lamp-over-lens': () =>
      'Les lampes les plus hautes sont au-dessus de l’objectif : leur lumière peut y tomber. Masquez-les, ou raccourcissez le fil.',
    'lights-few': ([count]) =>
      `${count} places, c’est peu : 24 à 60 et plus sont d’usage pour ajuster une surface.`,
    'focus-dose': ([percent]) =>
      `La mise en place et la mise au point font ${percent} % de la lumière que reçoit la plaque. Faites-les sur un substitut, avec moins de lumière.`,
    'dose-high': ([dose]) =>
      `${dose} lx h, c’est plus qu’un jour de huit heures d’exposition à 50 lx. Moins d’images, ou plus courtes.`,
  },
};
