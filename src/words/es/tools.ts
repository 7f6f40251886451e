/** What the viewer's tools say in the reader's browser, in Spanish. */
import { plural } from '../locale.ts';
import type { ToolWords } from '../en/tools.ts';
import { modes } from './modes.ts';

const many = plural('es');

export const tools: ToolWords = {
  measure: {
    begin: {
      length: 'Pulse en la imagen los dos extremos de lo que quiere medir.',
      angle: 'Pulse un extremo, el vértice y el otro extremo.',
      area: 'Pulse las esquinas una tras otra y después «Cerrar el contorno».',
      profile: 'Pulse los dos extremos de la línea cuya luminancia quiere.',
    },
    inPixels: 'No se conoce la escala de esta imagen: las longitudes se dan en píxeles.',
    corners: (set) =>
      `${many(set, { one: `${set} esquina puesta`, other: `${set} esquinas puestas` })}. Pulse la siguiente${set > 2 ? ' o cierre el contorno' : ''}.`,
    corner: 'Un extremo puesto. Pulse el vértice.',
    otherEnd: 'Pulse el otro extremo.',
    secondEnd: 'Un extremo puesto. Pulse el otro.',
    threeCorners: 'Un área necesita al menos tres esquinas.',
    noArea: 'No se conoce la escala de esta imagen, así que tampoco el área.',
    pixels: (number) => `${number} píxeles; no se conoce la escala`,
    uncertain: (value) => `${value}; no se conoce la incertidumbre de la escala`,
    standard: (value, uncertainty) => `${value} ± ${uncertainty} (incertidumbre típica)`,
    profile: (length, view, low, high, factor) =>
      `${length}. Luminancia de «${view}» a lo largo, lineal: de ${low} a ${high} del blanco${factor === 1 ? '' : `, leída a 1/${factor} del tamaño`}.`,
    along: (unit) => `a lo largo (${unit})`,
    luminance: 'luminancia (lineal 0 a 1)',
    inPixel: 'píxeles',
    keptScreen: (number) =>
      `Guardado en este navegador: ${number} píxeles por milímetro en esta pantalla.`,
    noActual: 'No se conoce la escala de esta imagen, así que tampoco su tamaño real.',
    tellScreen:
      'Diga primero el tamaño de esta pantalla: haga la línea tan ancha como una tarjeta bancaria.',
    actual: 'Mostrada a su tamaño real en esta pantalla.',
    times: (times) => `Mostrada ${times} veces más grande, en esta pantalla.`,
  },

  spots: {
    begin: {
      rectangle: 'Pulse dos esquinas opuestas en la imagen.',
      outline: 'Pulse las esquinas del contorno una tras otra y después «Cerrar el contorno».',
    },
    drawn: {
      rectangle: 'El rectángulo está trazado. Póngale un título y guárdelo.',
      outline: 'El contorno está trazado. Póngale un título y guárdelo.',
    },
    three: 'Un contorno necesita al menos tres esquinas.',
    unfinished: 'La forma no está terminada: pulse el resto o desactívela.',
    title: 'Ponga primero un título al lugar.',
    kept: 'Guardado solo en este navegador.',
    notKept: 'Este navegador no guarda nada aquí.',
    taken: (fresh, all) =>
      many(fresh, {
        one: `${fresh} de ${all} lugares era nuevo y está guardado.`,
        other: `${fresh} de ${all} lugares eran nuevos y están guardados.`,
      }),
    address: 'Dirección',
    addressOf: (title) => `Dirección del lugar ${title}`,
    remove: (title) => `Quitar «${title}»`,
    notJson: 'Este archivo no es JSON, así que no se pudo leer ningún lugar.',
    tooLarge: 'Este archivo es mayor que cualquier lista de lugares, así que no se leyó.',
    nothing:
      'Este archivo no tiene ninguna anotación con un rectángulo o un contorno en una vista de esta placa.',
  },

  take: {
    making: 'Componiendo la imagen …',
    failed: 'No se pudo hacer la imagen.',
    nothing: 'No se ve nada que llevarse.',
    rights: (rights) => `Derechos: ${rights}`,
    firstOnly: 'Solo se tomó la primera imagen.',
    full: (width, height) => `Hecha a plena resolución, ${width} por ${height} píxeles.`,
    smaller: (factor, width, height) =>
      `Hecha a 1/${factor} de la resolución plena, ${width} por ${height} píxeles: entera sería demasiado grande para un navegador.`,
  },

  cite: {
    copied: 'Copiado.',
    marked: 'Las palabras están marcadas; cópielas con el teclado o el menú.',
    and: ' y ',
    title: (title) => `«${title}»`,
    modes,
    view: (mode, names) => `vista ${mode} (${names})`,
    region: (region) => `región ${region} en píxeles del marco de la placa`,
    turned: 'lados cambiados',
    picture: (digests, date) => `Imagen ${digests}, leída el ${date}.`,
  },
};
