/** Las palabras del planificador en español: en su página y en el navegador. */
import type { PlannerWords } from '../en/planner.ts';
import { plural } from '../locale.ts';
import { drawings } from './drawings.ts';
import { planned } from './planned.ts';

const many = plural('es');

export const planner: PlannerWords = {
  title: 'Preparación de la iluminación',
  lead: 'Antes del disparo: dónde deben estar lámpara, máscara, vidrio y panel para que la placa vea solo lo que debe.',
  example:
    'Un ejemplo calculado: media placa bajo una cámara con objetivo de 100 mm. Cambie un número y el resto lo sigue; nada sale de esta página.',
  exampleAlone: 'Sin scripts, esta página muestra el ejemplo y las fórmulas.',
  inputs: 'Lo que hay a mano',
  results: 'Lo que se sigue',
  drawingsTitle: 'Las iluminaciones, a escala',
  warnings: 'Mire esto primero',
  noWarnings: 'Nada que avisar.',
  warningsCount: (count) =>
    count === 0 ? 'Nada que avisar.' : many(count, { one: 'Un aviso.', other: `${count} avisos.` }),
  formula: 'Fórmula y fuente',
  sheet: 'Hoja de iluminación',
  sheetNote: 'Imprima esta página: una hoja con los números y las precauciones.',
  print: 'Imprimir la hoja de iluminación',
  cautionsTitle: 'Precauciones',
  setups: 'Para sitting.yaml',
  figure: 'Magnitud',
  value: 'Valor',
  faulty: (fields) => `Fuera de sus límites: ${fields.join(', ')}.`,
  technique: 'Cómo se hace',

  groups: {
    plate: 'La placa',
    camera: 'Cámara y objetivo',
    lamp: 'Lámpara lateral',
    raking: 'Luz rasante',
    axial: 'Luz axial',
    series: 'Series y luz',
  },

  fields: {
    plateWidth: 'Ancho como lo ve la cámara',
    plateHeight: 'Alto',
    warp: 'Mayor inclinación de la superficie',
    depth: 'Del punto más bajo al más alto',
    focalLength: 'Distancia focal',
    cameraDistance: 'Del objetivo a la placa',
    lensFront: 'Diámetro frontal del objetivo',
    pixelPitch: 'Paso del sensor',
    sensorLong: 'Píxeles, lado largo',
    sensorShort: 'Píxeles, lado corto',
    iso: 'Sensibilidad ISO',
    lampBearing: 'Acimut, desde el borde superior, sentido horario',
    lampHeight: 'Altura sobre la placa',
    lampDistance: 'De la lámpara al centro de la placa',
    lampSize: 'Ancho de su cara o del difusor',
    reliefSlope: 'Pendiente que debe verse',
    rakingDistance: 'De la lámpara rasante al centro de la placa',
    glassIndex: 'Índice del vidrio',
    glassThickness: 'Grosor del vidrio',
    panelDistance: 'De la placa al panel, a lo largo de la luz',
    rangeStops: 'Gama que recoger',
    lightCount: 'Posiciones de la lámpara',
    focusLux: 'Luz al enfocar',
    focusMinutes: 'Tiempo de enfoque',
  },

  units: {
    stops: 'pasos',
    pixelsPerMillimetre: 'px por mm',
    linePairs: 'pares de líneas por mm',
  },

  sections: {
    camera: 'Cámara y abertura',
    dark: 'Entorno oscuro para el positivo',
    lamp: 'Lámpara lateral',
    raking: 'Luz rasante',
    axial: 'Luz axial por un vidrio',
    bracket: 'Serie de exposiciones',
    lights: 'Muchas lámparas',
    dose: 'Luz que recibe la placa',
  },

  setupNames: {
    normal: 'lámpara lateral, entorno oscuro',
    raking: 'luz rasante',
    axial: 'luz axial por un vidrio',
  },

  cautions: [
    'No tocar ni limpiar nunca la cara de la imagen: hasta un hisopo deja una raya.',
    'No abrir un conjunto sellado sin un conservador de fotografía. Conservar el vidrio y el sellado antiguos.',
    'Vidrio exudado o roto: parar, no limpiar, llamar a un conservador. Los bordes cortan.',
    'La imagen contiene mercurio y una limpieza antigua pudo dejar cianuro: guantes de nitrilo, aire fresco, sin calor; lavarse las manos.',
    'Limitar la luz: lámparas apagadas entre exposiciones, sin ultravioleta, 2 °C de calentamiento en total como mucho. Anotar la dosis.',
    'Sujetar vidrio, brazos y cables para que nada caiga sobre la placa; retirar el vidrio antes de alcanzarla.',
    'Las lámparas queman. Los flashes guardan una carga peligrosa después de apagarse; avisar a las personas sensibles a los destellos.',
    'Seguir las normas locales y dejar el ultravioleta y los tratamientos a personas formadas y autorizadas.',
  ],

  drawings,
  ...planned,
};
