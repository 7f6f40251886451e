/** Lo que dicen la forma impresa de una placa y el catálogo impreso, en español. */
import type { PrintWords } from '../en/print.ts';

export const print: PrintWords = {
  trueSize: 'A tamaño real: un milímetro en este papel es un milímetro en la placa.',
  ratio: (part) => `A ${part} del tamaño real.`,
  unknownSize: 'No a tamaño real: no se conoce la escala de las imágenes.',
  bar: (length) => `${length} en la placa`,
  covered: 'Cubierta, y cubierta también en papel:',
  title: 'Catálogo para imprimir',
  lead: 'Las placas de esta exposición para papel, cada una con sus dos lecturas, su registro y su historia.',
  how: 'Para hacerlo: npm run catalogue, en la carpeta del programa de la exposición. Toma las placas que se le nombren, o todas.',
  of: 'Un catálogo de placas',
  introduction: 'Introducción',
  contents: 'Placas de este catálogo',
  colophon: 'Sobre este catálogo',
  sizes:
    'Donde una placa lo dice, sus imágenes están a tamaño real. Esto vale si las páginas se imprimen al 100 %, sin ajustar al papel; mida la barra bajo las imágenes para estar seguro.',
  pictures:
    'Cada imagen se hizo de fotografías de la placa, como dice su propia página. Positivo y negativo son la misma placa bajo luz distinta. Los colores y tonos del papel no son los de una pantalla, ni estos los de la placa.',
  left: 'Las imágenes cubiertas en la exposición o retiradas de ella no están en este catálogo.',
  rights: 'Derechos',
  address: 'La exposición',
  write: 'Escribir a',
  program: (version) => `Hecho con Mirrorleaf ${version}.`,
  printed: 'Compuesto el',
  failed: (page) => `No se pudo leer ${page}, así que el catálogo no está completo.`,
};
