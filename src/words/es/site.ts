/** Las palabras de las páginas en español: marco, listas, búsqueda, lecciones, pie. */
import { plural } from '../locale.ts';
import type { SiteWords } from '../en/site.ts';

const many = plural('es');

export const site: SiteWords = {
  within: (name) => name.charAt(0).toLowerCase() + name.slice(1),
  languages: 'Idiomas',
  asWritten: (name) => `Este texto se muestra en el idioma en que se escribió (${name}).`,
  skip: 'Ir al texto',
  menu: 'Páginas',
  nav: {
    plates: 'Placas',
    techniques: 'Técnicas',
    lessons: 'Lecciones',
    glossary: 'Glosario',
    about: 'Acerca de',
    search: 'Buscar',
  },

  search: {
    title: 'Buscar',
    lead: 'En las palabras de cada placa, lugar, técnica y lección.',
    kind: { plate: 'Placa', technique: 'Técnica', lesson: 'Lección', page: 'Página' },
    field: 'Palabras que buscar',
    go: 'Buscar',
    none: (asked) => `Ninguna página contiene «${asked}».`,
    one: (asked) => `Una página contiene «${asked}».`,
    several: (count, asked) => `${count} páginas contienen «${asked}».`,
    more: 'Mostrar más',
    failed:
      'No se pudo cargar el índice de palabras. Las listas de abajo llevan a todas las páginas.',
    without: 'La búsqueda de palabras necesita scripts. Estas listas también llevan a todo:',
    covered: 'Las placas con una advertencia previa no se buscan; están en la lista de placas.',
    ways: 'Otras entradas',
  },

  home: {
    opening: 'La placa de apertura',
    openingLink: 'Leer la página de esta placa',
    plates: 'Las placas',
    all: (count) => many(count, { one: 'El índice', other: `El índice de las ${count} placas` }),
    read: 'Para leer',
  },

  index: {
    title: 'Placas',
    lead: 'Cada placa se muestra dos veces: como se ve con una lámpara a su lado ante una sala oscura, y como se ve cuando el espejo refleja algo claro.',
    narrow: 'Acotar la lista',
    any: 'Todo',
    process: 'Procedimiento',
    size: 'Formato',
    maker: 'Autor',
    place: 'Lugar',
    made: 'Fecha',
    from: 'Desde la',
    to: 'hasta la',
    photographed: 'Iluminación',
    reading: 'Lectura',
    condition: 'Estado',
    decade: (year) => `década de ${year}`,
    count: (plates) => many(plates, { one: ' placa', other: ' placas' }),
    shown: 'Placas mostradas:',
    none: 'Ninguna placa responde a todo esto. Quite una elección o empiece de nuevo.',
    again: 'Empezar de nuevo',
    order: 'Por orden de',
    orders: { date: 'fecha', title: 'título', number: 'número', size: 'formato' },
    by: (order) => `Placas por orden de ${order}`,
    search: 'Buscar en las palabras de todas las páginas',
  },

  techniques: {
    title: 'Técnicas',
    one: 'Técnica',
    lead: 'Una placa, varias luces. Qué muestra cada una, cómo se dispone y qué puede salir mal.',
    plates: 'Placas fotografiadas así',
    planner: 'Preparar una iluminación',
    plannerNote: 'números y dibujos para su cámara y su placa.',
    findings: 'Hallazgos de los que trata esta página',
  },
  lessons: {
    title: 'Lecciones',
    one: 'Lección',
    lead: 'Páginas para la clase: breves, con algo que hacer.',
    answer: 'La respuesta',
    answerOf: (title) => `La respuesta: ${title}`,
    answerLink: 'A la respuesta, en una página propia',
    back: 'Volver a la lección',
    print: 'Una hoja para la clase: imprima esta página. La respuesta no está en ella.',
    printNow: 'Imprimir la hoja',
    screen: 'Pantalla completa',
    live: 'La placa que cambia',
    liveNote:
      'Un solo mando mueve el dibujo y la placa. Sin scripts: la placa sostenida de dos maneras.',
    turn: 'Inclinar la placa',
    question: 'Una pregunta',
    forTeacher: 'Para el docente',
  },
  contents: 'En esta página',
  feed: 'Placas nuevas y modificadas',
  previewOf: (title) => `Las dos lecturas de «${title}» lado a lado`,
  moved: {
    title: 'Esta página ha cambiado de dirección',
    text: (title) => `«${title}» está ahora en otra dirección.`,
  },

  embed: {
    page: (title) => `Abrir la página de «${title}»`,
  },

  missing: {
    title: 'No existe esta página',
    text: 'No hay nada en esta dirección. Quizá la placa se haya retirado o la dirección esté mal escrita.',
    home: 'Al principio',
  },

  footer: {
    planner: 'Preparación de la iluminación',
    write: 'Escríbanos',
    rights: 'Imágenes, salvo que una placa diga otra cosa:',
    made: 'Hecho con Mirrorleaf. Sin cookies; nada se carga de otro sitio.',
  },
};
