/** Las frases del proceso en español; `{1}` como en inglés. */
import type { RecordWords } from '../en/record.ts';

export const record: RecordWords = {
  one: 'Una fotografía',
  frame: 'Toma {1} de una serie de {2}',
  base: '{1}. Define el marco al que se ajustan las demás.',
  part: '{1}, tal como se tomó; muestra una pequeña parte de la base.',
  placed: '{1}, remuestreada en el marco de la base; desvío de {2} px como máximo.',
  bent: '{1}, remuestreada en el marco de la base, con una corrección radial por un cambio de enfoque o de objetivo; desvío de {2} px como máximo.',
  smaller:
    '{1}, remuestreada en el marco de la base, al {2} % de sus píxeles en cada sentido, pues la toma no tiene más; desvío de {3} px de la base como máximo.',
  smallerBent:
    '{1}, remuestreada en el marco de la base, al {2} % de sus píxeles en cada sentido, pues la toma no tiene más, con una corrección radial por un cambio de enfoque o de objetivo; desvío de {3} px de la base como máximo.',
  failed: '{1}, tal como se tomó; no se pudo ajustar a la base.',
  notMeasured: '{1}, tal como se tomó; no se midió su lugar en el marco de la base.',
  closeUps: 'Los primeros planos de un mosaico tienen cada uno su lugar.',
  fast: 'rápido',
  weak: 'para imágenes débiles',
  controlPoints: 'puntos de control',

  merged: '{1} exposiciones unidas {2}, cada una ponderada por su ruido previsto.',
  mergedPlaced:
    '{1} exposiciones unidas {2}, cada una ponderada por su ruido previsto, y puestas en el marco de la base.',
  mergedMoved:
    '{1} exposiciones unidas {2}, cada una ponderada por su ruido previsto; {3} de ellas se habían movido y se desplazaron.',
  mergedMovedPlaced:
    '{1} exposiciones unidas {2}, cada una ponderada por su ruido previsto; {3} de ellas se habían movido y se desplazaron; puestas en el marco de la base.',
  byProfile: 'en luz lineal según el perfil de los archivos',
  byResponse: 'tras obtener la respuesta de la cámara de las propias tomas',
  byAssumption: 'suponiendo la curva sRGB, pues los archivos no llevan perfil',
  oneCurve: 'Se muestra con una sola curva para toda la imagen.',
  localCurve:
    'Se muestra con una reproducción local: se comprime lo que cambia despacio por la placa y se conserva el detalle fino.',
  rendering:
    'Una reproducción para el ojo: sus tonos están comprimidos y no deben medirse ni compararse con los de otra placa. La luz unida está en el archivo de conservación.',
  neighbourhood: 'Claro y oscuro solo se comparan en una vecindad pequeña.',
  heldRange: 'Margen entre el ruido y la saturación',
  usedRange: 'Margen de la placa, de la milésima más oscura a la más clara',
  clippedEverywhere: 'Saturado en todas las tomas',
  belowNoise: 'Bajo el ruido en todas las tomas',
  exposureError: 'Mayor error de un paso anotado',
  frameShift: 'Mayor desplazamiento entre tomas',
  stops: 'pasos',

  joined:
    '{1} primeros planos que se solapan, unidos: todos se colocaron a la vez por {2} puntos que comparten los vecinos, se igualaron en tono y se cortaron donde menos difieren. Cada uno se remuestrea una sola vez {3}.',
  onBase:
    'y queda en el marco de la base con {1} veces sus píxeles, con un desvío de {2} px de la base como máximo',
  ownFrame: 'y conserva un marco propio, pues no se pudo poner sobre la base',
  seams:
    'Se igualaron los tonos entre los primeros planos: no compare la claridad a través de una costura. Use un solo primer plano para medir la luz y para todo lo que sea más fino que el residuo de abajo.',
  sharedPoints: 'Residuo mediano de los puntos compartidos',
  worstPair: 'Residuo de la peor pareja',
  pairs: 'Parejas que concuerdan',
  of: 'de {1}',
  seamStep: 'Salto de tono en las costuras, percentil 95',
  seamStepLargest: 'Salto de tono en las costuras, el mayor',
  covered: 'Parte del marco cubierta',
  scale: 'Escala',

  relit:
    'Compuesta con {1} fotografías, una lámpara en otras tantas posiciones; la luz intermedia se interpola en tonos de pantalla.',
  foretoldBetter:
    'Una toma apartada se predice con las demás a {1} dB, {2} dB mejor que con la toma más cercana.',
  foretoldWorse:
    'Una toma apartada se predice con las demás a {1} dB, {2} dB peor que con la toma más cercana.',
  capturedOnly: 'Es demasiado poco para mostrar lámparas intermedias: solo se ofrecen las tomadas.',
  glints:
    'Con {1} lámparas a {2}° unas de otras, un destello más estrecho puede caer entre dos de ellas, donde ninguna toma lo vio: se funde de una a otra y no se desplaza. Más lámparas, o un difusor tan ancho como la separación, lo recogerían.',
  relitCaution:
    'No es una fotografía: no mida aquí tono ni color, y compruebe un destello o un arañazo en las tomas originales.',
  slope:
    'Derivada de las mismas fotografías: hacia dónde se inclina la superficie y cuánto, por cómo sigue su claridad a la lámpara. El gris es llano; el color dice hacia dónde cae, y su fuerza con cuánta pendiente.',
  relief:
    'Derivada: solo las pendientes bajo una lámpara que nunca estuvo ahí, con acimut {1}°, a {2}° sobre la placa, {3}. Los tonos de la imagen han desaparecido.',
  exaggerated: 'exageradas {1} veces',
  notExaggerated: 'sin exagerar',
  gloss:
    'Derivada: cuánta más luz dan las lámparas más claras que una superficie mate. Lo claro está pulido, arañado o parece mojado; lo negro es mate.',
  shapeCaution:
    'Las pendientes se estiman a partir de la luz y no miden alturas: un borde de empañamiento o una línea dibujada puede parecer un escalón, y los lugares saturados son menos seguros.',
  glossCaution:
    'No es una medida del estado: líneas de pulido, arañazos y espejo desnudo brillan todos.',
  leftOut: 'Una toma predicha con las demás',
  nearest: 'La toma más cercana en su lugar',
  kept: 'Tomas recompuestas a partir de los planos',
  spacing: 'Distancia de una lámpara a la siguiente',
  planes: 'Planos de datos',
  clippedOnce: 'Píxeles saturados al menos en una toma',
  unexplained: 'Luz que las pendientes no explican',
  strength: 'Fuerza de la lámpara de toma a toma, desviación típica',
  ball: 'Reflejos o contorno de la bola respecto a su círculo',

  raking:
    'Derivada de {1} tomas con luz rasante, igualadas en claridad: en cada punto, la más clara de ellas menos la parte que todas comparten. Lo que muestran por igual todos los acimutes, la imagen de la placa, desaparece; queda lo que responde a la lámpara.',
  rakingCaution:
    'No es un mapa de daños: arañazos, polvo, líneas de pulido y bordes de empañamiento se parecen aquí, y falta lo que corre hacia todas las lámparas. Compare con las tomas.',
  rakingMedian: 'Luz que añade la luz rasante, en el centro',
  rakingHigh: 'Luz que añade la luz rasante, centésima más clara',
  ofWhite: '% del blanco',
  colouring:
    'Derivada de la toma bajo una lámpara lateral y de la tomada en un campo uniforme: una película de empañamiento colorea por igual lo que la placa dispersa y lo que refleja; un pigmento, solo lo que dispersa. Donde ambas difieren se deja el color como está, donde quizá difieran es más pálido y todo lo demás es gris.',
  colouringCaution:
    'No identifica un pigmento ni prueba que un color se aplicara a mano: otros depósitos que dispersan luz de color tienen el mismo aspecto, y un tinte transparente pasa inadvertido. Donde el empañamiento es fuerte o la placa demasiado oscura, no se dice nada.',
  colouredArea: 'Superficie coloreada',
  uncertainty: 'Su incertidumbre, más o menos',
  colouredMost: 'Superficie coloreada, como máximo (ninguna es segura)',
  colouredShare: 'Parte de la placa que está coloreada',
  notJudged: 'Parte de la imagen de la que nada puede decirse, con su entorno',

  resolution: 'Píxeles por pulgada de placa',
  statedScale: 'la escala indicada',
  targetScale: 'la escala de la imagen',
  edgesScale: 'los bordes de la placa y su tamaño anotado',
  fromTarget: 'según una escala en la imagen',
  fromEdges: 'según los bordes de la placa',
  asStated: 'tal como se indica en la sesión',
  uncertaintyAssumed: '{1}, incertidumbre supuesta',
  measuredFrom: 'medida {1}',
  sizeAlone:
    'desconocida: el tamaño de la placa está anotado, pero no dónde están sus bordes en la imagen',
  notKnown: 'desconocida',
  plateWidth: 'Ancho entre los bordes de la placa',
  plateHeight: 'Alto entre los bordes de la placa',
  edgesFound: 'bordes hallados en la imagen',
  clippedImage: 'Saturado en la imagen',
  clippedEdge: 'Saturado a lo largo del borde de la placa',
  insideEdges: 'dentro de los bordes de la placa',
  wholePicture: 'toda la imagen',
  blur: 'Borrosidad de los bordes más nítidos',
  blurEdges: '{1} bordes, incluidos los de arañazos y polvo',
  extraBlur: 'Borrosidad además de la de «{1!}»',
  bothEdges: '{1} bordes que ambas muestran',
  unevenness: 'Desigualdad de la luz',
  blankField: 'campo vacío {1!}: del percentil 5 al 95, respecto a la mediana',
  fallOff: 'Caída de la luz sobre la placa',
  plateItself: 'la propia placa, frente a «{1!}»; sin campo vacío',
  clippedMap: 'Parte saturada de cada campo, sobre una vista general de la imagen.',
  blankMap: 'La luz en el campo vacío {1!}, sin sus puntos calientes.',
};
