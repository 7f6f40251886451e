/** Las palabras en el armazón del visor, en español: mandos, paneles, nombres de vistas. */
import type { StageWords } from '../en/stage.ts';
import { modes } from './modes.ts';

export const stage: StageWords = {
  readings: { positive: 'Positivo', negative: 'Negativo', mixed: 'Lectura mixta', none: null },
  lights: {
    normal: 'lámpara lateral',
    raking: 'luz rasante',
    axial: 'luz axial',
    transmitted: 'luz transmitida',
    ultraviolet: 'ultravioleta',
    infrared: 'infrarrojo',
    scan: 'escáner',
    other: null,
  },
  made: {
    merge: 'exposiciones fusionadas',
    relight: 'lámpara que se mueve',
    mosaic: 'vistas cercanas unidas',
    local: 'exposiciones fusionadas, detalle realzado',
    slope: 'pendiente de la superficie',
    relief: 'relieve de la superficie',
    gloss: 'brillo de la superficie',
    adds: 'lo que añade la luz rasante',
    colouring: 'coloreado a mano',
  },
  frame: {
    single: (n, of) => `fotografía ${n} de ${of}`,
    bracket: (n, of) => `exposición ${n} de ${of}`,
    lights: (n, of) => `lámpara ${n} de ${of}`,
    mosaic: (n, of) => `vista cercana ${n} de ${of}`,
  },
  apart: 'no se puso sobre las otras imágenes',
  alternative: (title, view) => `${title}: ${view}.`,

  register: {
    none: 'No hay dos lecturas de esta placa que coincidan; sus imágenes pueden verse lado a lado.',
    one: 'Hay una imagen de esta placa.',
    inFrame: 'Las dos lecturas están en el marco de la placa.',
    within: (pixels, micrometres) =>
      `Las dos lecturas coinciden dentro de ${pixels}${micrometres === null ? '' : ` (${micrometres})`}.`,
  },

  pixels: (size) => `(${size} píxeles)`,
  ways: 'Maneras de mirar',
  sizeAndTools: 'Tamaño y herramientas',
  modes,
  smaller: 'Menor',
  larger: 'Mayor',
  whole: 'Placa entera',
  tools: {
    move: 'Mover',
    measure: 'Medir',
    spots: 'Lugares',
    looks: 'Recorridos',
    take: 'Llevarse',
    cite: 'Citar',
  },
  correct: 'Cambiar lados',
  screen: 'Pantalla completa',
  divider: 'División',

  views: {
    view: 'Vista',
    first: 'Primera',
    second: 'Segunda',
    swap: 'Intercambiar',
    turned: 'Girada',
    keeps: 'Queda fija en',
    onScreen: 'la pantalla',
    onPlate: 'la placa',
    notOffered: (names, why) =>
      names.length === 1
        ? `«${names[0]}» no se ofrece aquí: ${why}. Puede verse en Mirar y Al lado.`
        : `${names.length} vistas no se ofrecen aquí: ${why}. Pueden verse en Mirar y Al lado.`,
    secondPlate: 'Segunda placa',
    thisPlate: 'esta placa',
    roughly: (names, why) =>
      names.length === 1
        ? `«${names[0]}» no coincide con las demás (${why}); los lugares solo corresponden aproximadamente.`
        : `${names.length} vistas no coinciden con las demás (${why}); los lugares solo corresponden aproximadamente.`,
    difference:
      'Entre las dos: gris medio donde nada ha cambiado, más claro donde la segunda es más clara, más oscuro donde es más oscura. Una décima de la escala de tonos se dibuja como la mitad del gris.',
    differenceNote:
      'Un cambio de lámpara, exposición o coincidencia parece un cambio de la placa. Los bordes dobles son imágenes algo desplazadas.',
  },

  tilt: {
    eye: 'ojo',
    plate: 'placa',
    tilt: 'Inclinación',
    dark: 'hacia lo oscuro',
    bright: 'hacia lo claro',
    less: 'Menos',
    more: 'Más',
    turning: 'Al punto de cambio',
    here: 'Leer lo que se ve',
    room: 'Sala',
    rooms: { dark: 'oscura', window: 'una ventana', bright: 'clara' },
    drag: 'Arrastrar mueve la imagen',
    device: 'Seguir este aparato',
    note: 'La imagen bajo la lámpara y la imagen en el espejo se suman en luz lineal, como las vería el ojo, y se llevan a una misma claridad.',
  },

  lamp: {
    height: 'Altura de la lámpara',
    bearing: 'Acimut de la lámpara',
    plate: 'placa',
    lens: 'objetivo',
    bearingField: 'Acimut',
    heightField: 'Altura',
    drawn: 'Qué se dibuja',
    as: {
      lit: 'Iluminada',
      relief: 'Relieve',
      slope: 'Pendiente',
      gloss: 'Brillo',
      frame: 'Toma hecha',
    },
    captured: 'Lámparas fotografiadas',
    nearest: 'Lámpara fotografiada más cercana',
    previous: 'Toma anterior',
    next: 'Toma siguiente',
    note: 'Arrastre la lámpara por el borde de la placa y por el cuarto de círculo, o use las dos reglas.',
  },

  range: {
    exposure: 'Exposición',
    white: 'Punto blanco',
    drawn: 'Qué se dibuja',
    rendering: 'Para la pantalla',
    merged: 'Luz fusionada',
    marks: 'Marcar lo que ninguna toma recoge',
    frames: 'Como una sola exposición',
    note: 'La serie recoge más luz de la que muestra una pantalla. Elija qué parte se ve.',
  },

  move: {
    group: 'Mover la imagen',
    left: 'Izquierda',
    right: 'Derecha',
    up: 'Arriba',
    down: 'Abajo',
  },

  measure: {
    group: 'Medir',
    kinds: {
      length: 'una longitud',
      angle: 'un ángulo',
      area: 'un área',
      profile: 'la luminancia a lo largo de una línea',
    },
    middle: 'Poner un punto en el centro de la imagen',
    close: 'Cerrar el contorno',
    again: 'Empezar de nuevo',
    save: 'Guardar los números como tabla',
    noScale: (from) => `Escala: desconocida. ${from}`,
    scale: (value, uncertainty, from) =>
      `Escala: ${value} píxeles por milímetro${uncertainty === null ? '' : ` ± ${uncertainty}`}; ${from}.`,
    actual: 'Tamaño real en esta pantalla',
    card: (width) => `Haga la línea tan ancha como una tarjeta bancaria (${width})`,
    cardSet: 'Ya es igual de ancha',
    one: 'Tamaño real',
    ten: 'Diez veces',
  },

  spots: {
    group: 'Lugares',
    none: 'Todavía no hay lugares marcados en esta placa.',
    title: 'Título de un lugar nuevo',
    note: 'Nota',
    shape: 'Forma del lugar nuevo',
    rectangle: 'Trazar un rectángulo',
    outline: 'Trazar un contorno',
    middle: 'Poner un punto en el centro de la imagen',
    close: 'Cerrar el contorno',
    mark: 'Guardar la forma, o lo que se ve',
    save: 'Guardar mis lugares en un archivo',
    open: 'Abrir un archivo de lugares',
    own: 'Sus lugares quedan en este navegador; nada se envía. El archivo sigue W3C Web Annotation.',
  },

  looks: {
    group: 'Recorridos guiados',
    look: 'Recorrido',
    back: 'Atrás',
    next: 'Siguiente',
    again: 'Ver otra vez este paso',
    class: 'Letra grande para la clase',
  },

  take: {
    group: 'Llevarse',
    png: 'Guardar lo que se ve como PNG',
    tiff: 'Guardarlo como TIFF',
    print: 'Imprimir lo que se ve como figura',
    note: 'A plena resolución, con escala, cita, crédito y derechos bajo la imagen y dentro del archivo. Un TIFF no está comprimido: tres bytes por píxel.',
  },

  cite: {
    group: 'Citar',
    citation: 'Lo que se ve, para una nota',
    copy: 'Copiar',
    embedding: 'Para mostrarlo en una página propia, pegue esto en ella',
    copyCode: 'Copiar el código',
  },
};
