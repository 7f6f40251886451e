/** Was der Planer über einen Plan sagt, auf Deutsch: Größen, Formeln, Warnungen. */
import type { PlannedWords } from '../en/planned.ts';

export const planned: PlannedWords = {
  figures: {
    magnification: 'Abbildungsmaßstab',
    scale: 'Pixel auf der Platte',
    resolution: 'Dasselbe in Pixeln je Zoll',
    field: 'Teil der Plattenebene im Bild',
    aperture: 'Schärfste Blende für diese Tiefe',
    'depth-of-field': 'Tiefe mit höchstens einem Pixel Unschärfe',
    blur: 'Alle Unschärfen zusammen, auf der Platte',
    'cut-off': 'Feinste Periode, die das Objektiv trägt',
    bellows: 'Längere Belichtung durch den Auszug',
    'mirror-angle': 'Der Spiegel sieht, beiderseits der Achse',
    mask: 'Schwarze Maske in der Objektivebene',
    hole: 'Loch darin, höchstens',
    'hole-on-plate': 'Dunkle Scheibe, die das Loch auf der Platte lässt',
    'lamp-place': 'Azimut und Höhe',
    'excluded-from': 'Der Spiegel zeigt die Lampe ab einer Höhe von',
    clearance: 'Die Oberfläche darf sich neigen um',
    'fall-off': 'Lichtabfall über die Platte',
    'fall-off-two': 'Derselbe mit gleicher Lampe gegenüber',
    'level-distance': 'Abstand für ein Drittel Blende',
    'raking-height': 'Höhe der Lampe',
    'relief-height': 'Größte Höhe, bei der die Neigung ein Viertel heller ist',
    'glint-slope': 'Wände dieser Neigung glitzern',
    'raking-bearings': 'Azimute, die keinen Kratzer auslassen',
    panel: 'Leuchtfläche, mindestens',
    'panel-evenness': 'Ihr Licht auf den Teilchen fällt ab um',
    'glass-loss': 'Zu öffnen gegenüber Licht ohne Glas',
    ghost: 'Geisterbild neben dem Bild',
    'ghost-pixels': 'Dasselbe in Pixeln',
    'ghost-strength': 'Stärke des Geisterbilds',
    polarised: 'Polarisierter Anteil dessen, was zurückkommt',
    polariser: 'Ein Polarisator am Objektiv ändert es um',
    'frame-range': 'Eine Aufnahme fasst',
    frames: 'Aufnahmen',
    step: 'Von Aufnahme zu Aufnahme',
    times: 'Zeiten, um eine mittlere von 1/4 s',
    held: 'Die Reihe fasst',
    'ring-heights': 'Höhen der Ringe',
    'ring-counts': 'Orte in jedem',
    'light-distance': 'Lampenabstand, gleichbleibend, mindestens',
    'light-distance-most': 'und höchstens',
    ball: 'Glänzende Kugel, Durchmesser mindestens',
    'ball-precision': 'Lampenrichtung für einen Pixel darauf',
    'dose-exposure': 'Eine Belichtung',
    'dose-focus': 'Scharfstellen',
    'dose-bracket': 'Die Belichtungsreihe',
    'dose-lights': 'Die Lampenreihe',
    'dose-all': 'Die ganze Sitzung',
    'dose-display': 'So viel wie Ausstellen bei 50 lx für',
    'flash-guide': 'Ein Blitz am Ort der Lampe: Leitzahl (m, ISO 100)',
  },

  formulas: {
    camera: [
      'm = f/(u − f); Pixel je mm = m/Abstand; Tiefe 2 N c (1 + m)/m²; Belichtung (1 + m)². Dünne Linse.',
      'Blende: kleinste Wurzel der Quadratsumme aus Defokus z m/(N (1 + m)), erstem dunklen Ring 2,44 λ N (1 + m)/m und Pixel, λ = 550 nm (nach Hansma, 1996, aus dem Gedächtnis), ab f/5,6, weil Objektive offen selten scharf sind. Feinste Periode m/(λ N (1 + m)).',
    ],
    dark: [
      'Im Abstand P zeigt der Spiegel Platte × (D + P)/D + Öffnung × P/D; in der Objektivebene (P = D) das Doppelte der Platte und die Öffnung. Halbwinkel atan(e/D). Eine Neigung w dreht den Strahl um 2 w. Reflexionsgesetz.',
    ],
    lamp: [
      'Die Platte zeigt die Lampe, wo ihre Normale den Winkel zwischen Lampe und Objektiv halbiert. Der Spielraum ist die kleinste Neigung, bei der das irgendwo geschieht, weniger die Hälfte des Lampenradius.',
      'Licht auf der Platte: z/d³ (Abstandsquadrat und Kosinus).',
    ],
    raking: [
      'Eine Wand der Neigung s ist sin(h + s)/sin h mal so hell wie die Ebene: cot h = (1 + C − cos s)/sin s für einen Kontrast C von einem Viertel. Eine Wand glitzert bei h = 90° − 2 s. Lambert; Reflexionsgesetz.',
    ],
    axial: [
      'Fresnel bei 45° für beide Polarisationen; eine Scheibe reflektiert 2 r/(1 + r) und lässt (1 − r)/(1 + r) durch. Was zurückkommt, ist das Mittel der Produkte, nicht das Produkt der Mittel.',
      'Geisterbild: t sin 2i/√(n² − sin² i), Stärke r². Leuchtfläche: wie die dunkle Umgebung, und ein Zehntel. Gleichmäßigkeit: Formfaktor eines Rechtecks (Katalog von Howell).',
    ],
    bracket: [
      'Eine Aufnahme fasst von der Sättigung bis zu einem Signal-Rausch-Verhältnis von 10: e/√(e + r²) = 10, mit 45 000 Elektronen und einem Ausleserauschen von 4, einer Annahme. Schritte von höchstens 2 Blenden, ein Drittel Blende Reserve.',
    ],
    lights: [
      'Ringe zwischen 15° und 65°, Orte im Verhältnis von cos h. Lampe bei 2,5 bis 4 Diagonalen: verbreitete Praxis, ohne Quelle. Ein Pixel auf einer Kugel vom Radius r ist 2/r der Lampenrichtung.',
    ],
    dose: [
      'Eine richtige Belichtung: C N² (1 + m)²/ISO Luxsekunden, C = 250, gleich wie lang. 50 lx ist die übliche Grenze für die empfindlichsten Objekte (CIE 157:2004, aus dem Gedächtnis); eine Zahl für diese Platten wurde nicht gefunden.',
      'Ein Blitz gibt dieselbe Dosis in kürzerer Zeit: Leitzahl = N (1 + m) d, Abstandsgesetz. Bei Netzlampen ganze Hundertstelsekunden (50 Hz) oder Zeiten ab einer Viertelsekunde nehmen.',
    ],
  },

  warningTexts: {
    'plate-too-large': ([w, h]) =>
      `Die Platte passt nicht: das Bild fasst ${w} × ${h} mm. Rücken Sie die Kamera weg, nehmen Sie eine kürzere Brennweite oder planen Sie ein Mosaik.`,
    'resolution-low': ([ppi]) =>
      `${ppi} Pixel je Zoll sind weniger als 600, die Zahl der höchsten Stufe für Abzüge (FADGI 2016). Gehen Sie näher, nehmen Sie eine längere Brennweite oder planen Sie ein Mosaik.`,
    'depth-short': ([depth, needed]) =>
      `Die Tiefe mit höchstens einem Pixel Unschärfe ist ${depth} mm, die Platte braucht ${needed} mm. Richten Sie sie aus oder nehmen Sie weichere Ecken hin.`,
    'blur-over-pixels': ([pixels]) =>
      `Selbst bei der besten Blende sind die Unschärfen zusammen ${pixels} Pixel breit: mehr Pixel, als das Objektiv füllen kann.`,
    'mask-large': ([w, h]) =>
      `Die Maske müsste ${w} × ${h} mm groß sein. Rücken Sie die Kamera weg.`,
    'lamp-in-mirror': ([height, limit]) =>
      `Bei ${height}° zeigt die Platte dem Objektiv die Lampe. Setzen Sie sie unter ${limit}° oder verkleinern Sie den Diffusor.`,
    'lamp-in-view': () => 'Die Lampe steht zwischen Objektiv und Platte.',
    'lamp-uneven': ([stops]) =>
      `Das Licht fällt über die Platte um ${stops} Blenden ab. Rücken Sie die Lampe weg, stellen Sie eine gegenüber oder teilen Sie durch ein leeres Feld.`,
    'relief-too-flat': ([slope, height]) =>
      `Eine Neigung von ${slope}° hebt sich erst unter ${height}° ab, wo schon der Plattenrand Schatten wirft. Suchen Sie sie lieber in axialem Licht.`,
    'panel-large': ([w, h]) =>
      `Die Leuchtfläche müsste ${w} × ${h} mm groß sein. Bringen Sie sie näher oder rücken Sie die Kamera weg.`,
    'glass-in-way': ([distance]) =>
      `${distance} mm lassen keinen Platz für eine Scheibe unter 45° über der Platte: näher, als die Platte lang ist.`,
    'glass-thick': ([ghost]) =>
      `Das Geisterbild liegt ${ghost} mm neben dem Bild. Dünneres Glas bringt es näher; entspiegeltes schwächt es.`,
    'bracket-long': ([seconds]) =>
      `Die längste Aufnahme dauert ${seconds} s. Geben Sie der ganzen Reihe mehr Licht, nie einer Aufnahme eine größere Blende.`,
    'ring-in-mirror': ([limit]) =>
      `Ab ${limit}° sind Lampen im Spiegel zu sehen: diese Aufnahmen werden übersteuert.`,
    'lamp-over-lens': () =>
      'Die höchsten Lampen stehen über dem Objektiv: ihr Licht kann hineinfallen. Schirmen Sie sie ab oder kürzen Sie die Schnur.',
    'lights-few': ([count]) =>
      `${count} Orte sind wenige: 24 bis 60 und mehr sind üblich, um eine Oberfläche anzupassen.`,
    'focus-dose': ([percent]) =>
      `Einrichten und Scharfstellen sind ${percent} % des Lichts, das die Platte empfängt. Stellen Sie an einem Ersatzstück scharf, bei weniger Licht.`,
    'dose-high': ([dose]) =>
      `${dose} lx h sind mehr als ein Tag von acht Stunden in der Ausstellung bei 50 lx. Weniger Aufnahmen oder kürzere.`,
  },
};
