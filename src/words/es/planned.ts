/** Lo que el planificador dice de un plan, en español: cifras, fórmulas, avisos. */
import type { PlannedWords } from '../en/planned.ts';

export const planned: PlannedWords = {
  figures: {
    magnification: 'Aumento',
    scale: 'Píxeles en la placa',
    resolution: 'Lo mismo en píxeles por pulgada',
    field: 'Parte del plano de la placa en la imagen',
    aperture: 'Abertura más nítida para esta profundidad',
    'depth-of-field': 'Profundidad con un píxel de desenfoque como mucho',
    blur: 'Todos los desenfoques juntos, en la placa',
    'cut-off': 'Período más fino que lleva el objetivo',
    bellows: 'Exposición más larga por la extensión',
    'mirror-angle': 'El espejo ve, a cada lado del eje',
    mask: 'Máscara negra en el plano del objetivo',
    hole: 'Su agujero, como mucho',
    'hole-on-plate': 'Disco oscuro que el agujero deja en la placa',
    'lamp-place': 'Acimut y altura',
    'excluded-from': 'El espejo muestra la lámpara desde una altura de',
    clearance: 'La superficie puede inclinarse',
    'fall-off': 'Caída de luz en la placa',
    'fall-off-two': 'La misma con una lámpara igual enfrente',
    'level-distance': 'Distancia para un tercio de paso',
    'raking-height': 'Altura de la lámpara',
    'relief-height': 'Mayor altura a la que la pendiente es un cuarto más clara',
    'glint-slope': 'Las paredes de esta pendiente destellan',
    'raking-bearings': 'Acimuts que no dejan raya sin ver',
    panel: 'Panel, al menos',
    'panel-evenness': 'Su luz sobre las partículas cae',
    'glass-loss': 'Que abrir frente a la luz sin vidrio',
    ghost: 'Imagen fantasma junto a la imagen',
    'ghost-pixels': 'La misma en píxeles',
    'ghost-strength': 'Fuerza de la imagen fantasma',
    polarised: 'Parte polarizada de lo que vuelve',
    polariser: 'Un polarizador en el objetivo lo cambia en',
    'frame-range': 'Una toma recoge',
    frames: 'Tomas',
    step: 'De toma a toma',
    times: 'Tiempos, desde uno medio de 1/4 s',
    held: 'La serie recoge',
    'ring-heights': 'Alturas de los anillos',
    'ring-counts': 'Posiciones en cada uno',
    'light-distance': 'Distancia de la lámpara, constante, al menos',
    'light-distance-most': 'y como mucho',
    ball: 'Bola brillante, diámetro al menos',
    'ball-precision': 'Dirección de lámpara por un píxel en ella',
    'dose-exposure': 'Una exposición',
    'dose-focus': 'Enfoque',
    'dose-bracket': 'La serie de exposiciones',
    'dose-lights': 'La serie de lámparas',
    'dose-all': 'Toda la sesión',
    'dose-display': 'Lo mismo que expuesta a 50 lx durante',
    'flash-guide': 'Un flash en el lugar de la lámpara: número guía (m, ISO 100)',
  },

  formulas: {
    camera: [
      'm = f/(u − f); píxeles por mm = m/paso; profundidad 2 N c (1 + m)/m²; exposición (1 + m)². Lente delgada.',
      'Abertura: la menor raíz de la suma de los cuadrados del desenfoque z m/(N (1 + m)), el primer anillo oscuro 2,44 λ N (1 + m)/m y el píxel, λ = 550 nm (según Hansma, 1996, de memoria), desde f/5,6, pues los objetivos rara vez son nítidos abiertos. Período más fino m/(λ N (1 + m)).',
    ],
    dark: [
      'A una distancia P el espejo muestra placa × (D + P)/D + abertura × P/D; en el plano del objetivo (P = D), dos veces la placa y la abertura. Semiángulo atan(e/D). Una inclinación w gira el rayo 2 w. Ley de la reflexión.',
    ],
    lamp: [
      'La placa muestra la lámpara donde su normal divide el ángulo entre lámpara y objetivo. El margen es la menor inclinación a la que algún lugar lo hace, menos la mitad del radio de la lámpara.',
      'Luz en la placa: z/d³ (inverso del cuadrado y coseno).',
    ],
    raking: [
      'Una pared de pendiente s es sin(h + s)/sin h veces más clara que lo llano: cot h = (1 + C − cos s)/sin s para un contraste C de un cuarto. Una pared destella a h = 90° − 2 s. Lambert; ley de la reflexión.',
    ],
    axial: [
      'Fresnel a 45° para ambas polarizaciones; una lámina refleja 2 r/(1 + r) y deja pasar (1 − r)/(1 + r). Lo que vuelve es la media de los productos, no el producto de las medias.',
      'Imagen fantasma: t sin 2i/√(n² − sin² i), fuerza r². Panel: como el entorno oscuro, y una décima. Uniformidad: factor de configuración de un rectángulo (catálogo de Howell).',
    ],
    bracket: [
      'Una toma recoge desde su saturación hasta una relación señal-ruido de 10: e/√(e + r²) = 10, con 45 000 electrones y un ruido de lectura de 4, una suposición. Saltos de 2 pasos como mucho, un tercio de paso de reserva.',
    ],
    lights: [
      'Anillos entre 15° y 65°, posiciones en proporción a cos h. Lámpara a 2,5 a 4 diagonales: práctica común, sin fuente. Un píxel en una bola de radio r es 2/r de dirección de lámpara.',
    ],
    dose: [
      'Una exposición correcta: C N² (1 + m)²/ISO lux segundos, C = 250, sea cual sea el tiempo. 50 lx es el límite habitual para los objetos más sensibles (CIE 157:2004, de memoria); no se halló cifra para estas placas.',
      'Un flash da la misma dosis en menos tiempo: número guía = N (1 + m) d, ley del inverso del cuadrado. Con una lámpara de red, tome centésimas de segundo enteras (50 Hz) o tiempos de un cuarto de segundo y más.',
    ],
  },

  warningTexts: {
    'plate-too-large': ([w, h]) =>
      `La placa no cabe: la imagen recoge ${w} × ${h} mm. Aleje la cámara, use una focal más corta o prevea un mosaico.`,
    'resolution-low': ([ppi]) =>
      `${ppi} píxeles por pulgada son menos de 600, la cifra del nivel más alto para copias (FADGI 2016). Acérquese, use una focal más larga o prevea un mosaico.`,
    'depth-short': ([depth, needed]) =>
      `La profundidad con un píxel de desenfoque es de ${depth} mm, la placa necesita ${needed} mm. Nivélela o acepte esquinas más suaves.`,
    'blur-over-pixels': ([pixels]) =>
      `Aun con la mejor abertura los desenfoques juntos miden ${pixels} píxeles: más píxeles de los que el objetivo puede llenar.`,
    'mask-large': ([w, h]) => `La máscara tendría que medir ${w} × ${h} mm. Aleje la cámara.`,
    'lamp-in-mirror': ([height, limit]) =>
      `A ${height}° la placa muestra la lámpara al objetivo. Póngala por debajo de ${limit}° o reduzca su difusor.`,
    'lamp-in-view': () => 'La lámpara está entre el objetivo y la placa.',
    'lamp-uneven': ([stops]) =>
      `La luz cae ${stops} pasos en la placa. Aleje la lámpara, añada otra enfrente o divida por un campo vacío.`,
    'relief-too-flat': ([slope, height]) =>
      `Una pendiente de ${slope}° solo resalta por debajo de ${height}°, donde el propio borde de la placa hace sombra. Búsquela mejor con luz axial.`,
    'panel-large': ([w, h]) =>
      `El panel tendría que medir ${w} × ${h} mm. Acérquelo o aleje la cámara.`,
    'glass-in-way': ([distance]) =>
      `${distance} mm no dejan sitio para una lámina a 45° sobre la placa: más cerca que el largo de la placa.`,
    'glass-thick': ([ghost]) =>
      `La imagen fantasma está a ${ghost} mm de la imagen. Un vidrio más fino la acerca; uno tratado la debilita.`,
    'bracket-long': ([seconds]) =>
      `La toma más larga dura ${seconds} s. Use más luz para toda la serie, nunca una abertura mayor para una toma.`,
    'ring-in-mirror': ([limit]) =>
      `Desde ${limit}° las lámparas se ven en el espejo: esas tomas se saturarán.`,
    'lamp-over-lens': () =>
      'Las lámparas más altas están sobre el objetivo: su luz puede caer en él. Ocúltelas o acorte el hilo.',
    'lights-few': ([count]) =>
      `${count} posiciones son pocas: de 24 a 60 y más es lo usual para ajustar una superficie.`,
    'focus-dose': ([percent]) =>
      `Disponer y enfocar son el ${percent} % de la luz que recibe la placa. Enfoque sobre un sustituto, con menos luz.`,
    'dose-high': ([dose]) =>
      `${dose} lx h son más que un día de ocho horas expuesta a 50 lx. Menos tomas, o más cortas.`,
  },
};
