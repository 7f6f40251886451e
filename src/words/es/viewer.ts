/** Lo que dice el visor en el navegador, en español. */
import type { ViewerWords } from '../en/viewer.ts';
import { tools } from './tools.ts';

const sides = [
  'desde arriba',
  'desde arriba a la derecha',
  'desde la derecha',
  'desde abajo a la derecha',
  'desde abajo',
  'desde abajo a la izquierda',
  'desde la izquierda',
  'desde arriba a la izquierda',
];

export const viewer: ViewerWords = {
  ...tools,
  faults: {
    pictures: 'No se pudieron abrir las imágenes.',
    picture: 'No se pudo leer la imagen.',
    part: 'No se pudo cargar una parte de la imagen.',
    offline: 'No se pudo cargar la imagen: sin conexión.',
    answer: (status, address) => `No se pudo cargar la imagen: ${status} en ${address}.`,
    notPicture: (address) => `Lo que vino de ${address} no describe una imagen.`,
    dataOffline: 'No se pudieron cargar los datos de esta vista: sin conexión.',
    dataAnswer: (status, address) =>
      `No se pudieron cargar los datos de esta vista: ${status} en ${address}.`,
    notData: (address) => `Lo que vino de ${address} no describe planos de datos.`,
    noPixels: 'Este navegador no deja leer píxeles.',
    noDrawing: 'Este navegador no deja dibujar imágenes.',
    noScreen: 'Este navegador no permite aquí la pantalla completa.',
    otherPlate: 'No se pudo cargar lo que se sabe de la otra placa.',
    noPlate: (slug) => `No hay una placa «${slug}» que mostrar al lado de esta.`,
  },

  surface: {
    name: (title, n) =>
      `${title}: ${['', 'segunda ', 'tercera '][n]}imagen. Las flechas la mueven, más y menos cambian su tamaño, 0 la muestra entera.`,
    plainTilt:
      'Este navegador dibuja aquí sin shaders: Inclinar se muestra como un fundido simple, que no es lo que hace la luz.',
    plainMode:
      'Este navegador dibuja aquí sin shaders, que esta manera de mirar necesita; la imagen se muestra tal cual.',
  },

  stills: {
    plain:
      'Este navegador no puede mezclar las dos lecturas: Inclinar va por pasos mezclados de antemano, en luz lineal.',
    step: (held, n, count) => `${held} (paso ${n} de ${count})`,
    title: 'Entre las dos lecturas',
    alternative: (title, degrees) => `${title}, inclinada ${degrees}`,
  },

  caption: {
    tilt: (degrees) => `Positivo y negativo sumados en luz lineal, inclinación ${degrees}`,
    still: (degrees) => `Positivo y negativo sumados de antemano, inclinación ${degrees}`,
    fade: 'Positivo y negativo en un fundido simple',
    relief: 'Relieve de la superficie, dibujado de sus pendientes',
    slope: 'Pendiente de la superficie hacia la lámpara',
    gloss: 'Brillo de la superficie',
    frame: (n, of) => `Toma ${n} de ${of}, tal como se hizo`,
    lamp: (place, photographs) =>
      `Bajo una lámpara: ${place}, calculado de ${photographs} fotografías`,
    rendered: 'Exposiciones fusionadas, para la pantalla',
    merged: (stops) => `Exposiciones fusionadas, luz a ${stops}`,
    exposure: (seconds) => `Exposiciones fusionadas, como una sola de ${seconds}`,
  },

  picture: {
    waiting:
      'Faltan partes de la imagen: la conexión es lenta. Lo que ya está puede moverse y girarse.',
    across: (percent) => `al ${percent} del ancho`,
    degrees: (degrees) => `${degrees} grados`,
    turned:
      'Izquierda y derecha cambiadas: escritura y botones quedan como ante la cámara. La placa misma los muestra al revés.',
    unturned: 'Como se ve la placa: izquierda y derecha como en el objeto.',
    noScale: 'escala desconocida: no se muestran longitudes',
    noFrame: 'esta imagen no está en el marco de la placa',
    sameScale:
      'Las dos placas se muestran a la misma escala: un milímetro es igual de largo en una y en otra.',
    notSameScale:
      'No se conoce la escala de una de las dos, así que no se muestran a la misma escala.',
  },

  address: {
    noView: (id) => `Esta placa ya no tiene la vista «${id}».`,
    noSpot: (id) => `Esta placa ya no tiene el lugar «${id}».`,
    changed: 'La imagen ha cambiado desde que se hizo esta dirección; se muestra el mismo lugar.',
    tilt: 'Inclinar necesita un positivo y un negativo que coincidan; esta placa no tiene tal par.',
    apart: (name, why) => `«${name}» no puede ponerse bajo una división: ${why ?? 'sin alinear'}.`,
    lamp: 'Lámpara necesita tomas bajo muchas lámparas; esta placa no las tiene.',
    range: 'Gama necesita una serie de exposiciones fusionada; esta placa no la tiene.',
    difference: 'Diferencia necesita dos sesiones que coincidan; esta placa no tiene tal par.',
  },

  tilt: {
    noPair: 'No hay un par que coincida.',
    beingRead: 'se está leyendo',
    small: 'No se pudieron leer las imágenes pequeñas.',
    pressed: 'El lugar que ha pulsado',
    inSight: 'Lo que se ve',
    reading: {
      'reads positive': 'se lee en positivo',
      turning: 'está cambiando',
      'reads negative': 'se lee en negativo',
    },
    now: (what, reading, turns) => `${what} ${reading}; ${turns}.`,
    unread: (what, reason) => `${what} no puede leerse: ${reason}.`,
    noTurn: (reason) => `sin punto de cambio: ${reason}`,
    notHere: 'no cambia en esta sala',
    turnsAt: (degrees) => `cambia a ${degrees}`,
    unknown: (reason) => `No se conoce el punto de cambio: ${reason}.`,
    none: (reason) => `Esta placa no tiene punto de cambio: ${reason}.`,
    never: 'En esta sala el espejo nunca llega a ser bastante claro: la placa no cambia.',
    at: (degrees) =>
      `Luces y sombras son igual de claras a ${degrees}: el punto de cambio de esta placa.`,
    reasons: {
      'the positive has no tones to compare here': 'el positivo no tiene aquí tonos que comparar',
      'the negative does not reverse the tones here': 'el negativo no invierte aquí los tonos',
      'the two pictures differ in size': 'las dos imágenes difieren en tamaño',
      'fewer than 100 samples lie in it': 'contiene menos de 100 muestras',
    },
  },

  device: {
    stopped: 'La placa ya no sigue este aparato.',
    lessMotion:
      'Este aparato pide menos movimiento, así que no se usa su inclinación. Use la regla.',
    silent: 'Este aparato no dice cómo se sostiene.',
    denied: 'No se dio permiso.',
    follows:
      'La placa sigue este aparato: inclínelo hacia usted o en sentido contrario. Pulse otra vez para parar.',
  },

  lamp: {
    none: 'Esta placa no tiene tomas bajo muchas lámparas.',
    from: (bearing) => sides[Math.round(bearing / 45) % 8],
    place: (bearing, height) => `acimut ${bearing}, ${height} sobre la placa`,
    height: (degrees) => `${degrees} grados sobre la placa`,
    bearing: (degrees, from) => `${degrees} grados, ${from}`,
    stands: (place, from) => `La lámpara: ${place}, ${from}.`,
    frame: (n, place) => `Toma ${n} tal como se hizo; lámpara: ${place}.`,
    frameKept: (n, place) =>
      `Lámpara de la toma ${n}: ${place}; la toma misma no está publicada, así que esto es el cálculo en su lugar.`,
    relief: (times) =>
      `Relieve: la superficie sola, como mate; las pendientes se dibujan ${times === null ? 'más empinadas' : `${times} veces más empinadas`}.`,
    slope: (ends) =>
      `Pendiente: el blanco sube hacia la lámpara, el negro baja, lo llano es gris medio${ends === null ? '' : `; los extremos son pendientes de ${ends}`}.`,
    gloss:
      'Brillo: lo que las lámparas más claras añaden a la parte mate, más claro donde una faceta envía la lámpara al objetivo.',
    onlyFrames: (n, place) =>
      `Aquí solo se ofrecen las lámparas fotografiadas: esta es la toma ${n}; lámpara: ${place}.`,
    nearest: (place) =>
      `No se fotografió ninguna lámpara tan lejos: se muestra la más cercana que encierran las fotografiadas (${place}).`,
    fit: (lamps, apart, leftOut, nearest) =>
      `Calculado de ${lamps} lámparas, separadas ${apart}. Una toma dejada fuera se predice a ${leftOut}; su vecina más cercana en su lugar da ${nearest}.`,
    notFree:
      'Eso gana muy poco sobre las propias tomas, así que no se ofrecen lámparas intermedias.',
    clipped: (share) =>
      `${share} de la placa estaba saturado en al menos una toma; allí el destello era más claro de lo que se muestra.`,
    surface: (share) =>
      `Relieve, pendiente y brillo siguen una superficie mate ajustada que deja ${share} de su luz sin explicar.`,
  },

  range: {
    none: 'Esta placa no tiene una serie de exposiciones fusionada.',
    stops: (number) => `${number} pasos`,
    asRendered: 'para la pantalla',
    white: (light) => `la luz ${light} es blanca`,
    oneExposure: (seconds) =>
      `Como una sola exposición de ${seconds}: lo más claro que su blanco está saturado.`,
    rendered:
      'Para la pantalla: la gama amplia está comprimida, así que la claridad no es proporcional a la luz.',
    merged: (stops) =>
      `Luz fusionada a ${stops}: en esta pantalla la claridad es proporcional a la luz, y lo que supera el punto blanco está saturado.`,
    note: (frames, shortest, longest, span) =>
      `Fusionado de ${frames} exposiciones, de ${shortest} a ${longest}; del ruido a la luz más clara, ${span}.`,
    waiting: 'Luz de lo que se ve, en pasos. Todavía no ha llegado nada.',
    histogram: 'Luz de lo que se ve, en pasos; las alturas son raíces cuadradas.',
    above: (percent) =>
      percent === null ? 'Nada supera el punto blanco.' : `${percent} supera el punto blanco.`,
  },

  looks: { step: (n, of) => `${n} de ${of}` },

  turning: {
    eye: 'ojo',
    plate: 'placa',
    lamp: 'lámpara',
    dark: 'pared oscura',
    bright: { dark: 'sala en penumbra', window: 'ventana clara', bright: 'sala clara' },
    looks: 'aquí mira el espejo',
    tilt: (degrees) => `Placa inclinada ${degrees}, la línea del espejo el doble.`,
    title: (degrees) =>
      `Sección: un ojo ante una placa inclinada ${degrees}, una lámpara al lado, una pared oscura tras el ojo y una ventana clara encima.`,
    scattered: 'de la lámpara, dispersado por la plata',
    mirrored: 'de la sala, por el espejo',
  },
};
