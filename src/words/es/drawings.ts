/** Las palabras en los dibujos de iluminación y los mapas pequeños, en español. */
import { plural } from '../locale.ts';
import type { DrawingWords } from '../en/drawings.ts';

const many = plural('es');

export const drawings: DrawingWords = {
  plan: 'Desde arriba, a escala',
  section: 'De lado, a escala',
  planTitle: (what) => `La iluminación desde arriba, a escala: ${what}.`,
  sectionTitle: (what) => `La iluminación de lado, a escala: ${what}.`,
  plate: 'placa',
  topEdge: 'borde superior',
  lens: 'objetivo',
  lensUnknown: 'objetivo: distancia sin anotar',
  lamp: 'lámpara',
  lampAt: (distance) =>
    distance === null ? 'lámpara: distancia sin anotar' : `lámpara, ${distance}`,
  diffuser: 'difusor',
  lampsWithoutPlace: (count) =>
    many(count, { one: 'lámpara: lugar sin anotar', other: `${count} lámparas: lugar sin anotar` }),
  panel: (distance) =>
    distance === null ? 'panel: distancia sin anotar' : `panel, ${distance} a lo largo de la luz`,
  panelUnknown: 'panel: lado sin anotar',
  panelSize: 'panel: tamaño sin anotar',
  glass: (thickness) => (thickness === null ? 'vidrio: grosor sin anotar' : `vidrio, ${thickness}`),
  glassHeight: 'su altura no está anotada',
  glassFree: 'a cualquier altura sobre la placa',
  surround: {
    dark: 'oscuro: todo lo que muestra el espejo',
    bright: 'claro: todo lo que muestra el espejo',
    mixed: 'en parte oscuro, en parte claro',
  },
  surroundUnknown: 'entorno sin anotar',
  behind: 'luz desde atrás',
  plateUnknown: 'placa: tamaño sin anotar',
  lamps: (count) => `${count} posiciones de la lámpara`,
  notToScale: 'Lo gris y a trazos no está anotado, y su lugar no está a escala.',

  maps: {
    evenness: 'sin tinta al 150 % de la mediana, tinta plena al 50 %',
    clipping: 'tinta plena desde el 25 % de un campo',
    residual: (pixels) => `tinta plena desde ${pixels}`,
    turning: 'sin tinta a la mitad, tinta plena al doble del de la placa',
  },
};
