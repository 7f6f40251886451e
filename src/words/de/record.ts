/** Die Sätze der Verarbeitung auf Deutsch; `{1}` wie im Englischen. */
import type { RecordWords } from '../en/record.ts';

export const record: RecordWords = {
  one: 'Eine Fotografie',
  frame: 'Bild {1} einer Reihe von {2}',
  base: '{1}. Sie bestimmt den Rahmen, an dem die anderen ausgerichtet sind.',
  part: '{1}, wie aufgenommen; zeigt nur einen kleinen Teil der Grundaufnahme.',
  placed: '{1}, in den Rahmen der Grundaufnahme umgerechnet; Abweichung höchstens {2} px.',
  bent: '{1}, in den Rahmen der Grundaufnahme umgerechnet, mit radialer Korrektur für veränderte Schärfe oder anderes Objektiv; Abweichung höchstens {2} px.',
  smaller:
    '{1}, in den Rahmen der Grundaufnahme umgerechnet, mit {2} % ihrer Pixel je Richtung, da die Aufnahme nicht mehr hat; Abweichung höchstens {3} px der Grundaufnahme.',
  smallerBent:
    '{1}, in den Rahmen der Grundaufnahme umgerechnet, mit {2} % ihrer Pixel je Richtung, da die Aufnahme nicht mehr hat, und mit radialer Korrektur für veränderte Schärfe oder anderes Objektiv; Abweichung höchstens {3} px der Grundaufnahme.',
  failed: '{1}, wie aufgenommen; ließ sich nicht an der Grundaufnahme ausrichten.',
  notMeasured: '{1}, wie aufgenommen; ihr Ort im Rahmen der Grundaufnahme wurde nicht gemessen.',
  closeUps: 'Nahaufnahmen eines Mosaiks haben jede ihren eigenen Ort.',
  fast: 'schnell',
  weak: 'für schwache Bilder',
  controlPoints: 'Passpunkte',

  merged: '{1} Belichtungen vereinigt {2}, jede nach ihrem vorausgesagten Rauschen gewichtet.',
  mergedPlaced:
    '{1} Belichtungen vereinigt {2}, jede nach ihrem vorausgesagten Rauschen gewichtet, in den Rahmen der Grundaufnahme gelegt.',
  mergedMoved:
    '{1} Belichtungen vereinigt {2}, jede nach ihrem vorausgesagten Rauschen gewichtet; {3} davon hatten sich bewegt und wurden verschoben.',
  mergedMovedPlaced:
    '{1} Belichtungen vereinigt {2}, jede nach ihrem vorausgesagten Rauschen gewichtet; {3} davon hatten sich bewegt und wurden verschoben; in den Rahmen der Grundaufnahme gelegt.',
  byProfile: 'in linearem Licht nach dem Profil der Dateien',
  byResponse: 'nachdem die Kennlinie der Kamera aus den Bildern selbst ermittelt war',
  byAssumption: 'mit angenommener sRGB-Kurve, da die Dateien kein Profil tragen',
  oneCurve: 'Gezeigt als Wiedergabe mit einer Kurve für das ganze Bild.',
  localCurve:
    'Gezeigt als örtliche Wiedergabe: Was sich langsam über die Platte ändert, ist gestaucht, Feines bleibt erhalten.',
  rendering:
    'Eine Wiedergabe für das Auge: Ihre Töne sind gestaucht und dürfen weder gemessen noch mit denen einer anderen Platte verglichen werden. Das vereinigte Licht liegt in der Archivdatei.',
  neighbourhood: 'Hell und Dunkel sind nur in enger Nachbarschaft vergleichbar.',
  heldRange: 'Umfang zwischen Rauschen und Überstrahlung',
  usedRange: 'Umfang der Platte, dunkelstes bis hellstes Tausendstel',
  clippedEverywhere: 'In jedem Bild überstrahlt',
  belowNoise: 'In jedem Bild unter dem Rauschen',
  exposureError: 'Größter Fehler einer vermerkten Stufe',
  frameShift: 'Größte Verschiebung zwischen Bildern',
  stops: 'Blenden',

  joined:
    '{1} überlappende Nahaufnahmen, zusammengefügt: Alle wurden zugleich gesetzt nach {2} Punkten, die Nachbarn gemeinsam haben, im Ton ausgeglichen und dort geschnitten, wo sie sich am wenigsten unterscheiden. Jede ist einmal umgerechnet {3}.',
  onBase:
    'und liegt im Rahmen der Grundaufnahme mit dem {1}-Fachen ihrer Pixel, Abweichung höchstens {2} px der Grundaufnahme',
  ownFrame: 'und behält einen eigenen Rahmen, da sie sich nicht auf die Grundaufnahme legen ließ',
  seams:
    'Die Töne wurden zwischen den Nahaufnahmen ausgeglichen: Vergleichen Sie keine Helligkeit über eine Naht hinweg. Nehmen Sie zum Messen von Licht eine einzelne Nahaufnahme, ebenso für alles, was feiner ist als der Restfehler unten.',
  sharedPoints: 'Median des Restfehlers gemeinsamer Punkte',
  worstPair: 'Restfehler des schlechtesten Paares',
  pairs: 'Übereinstimmende Paare',
  of: 'von {1}',
  seamStep: 'Tonsprung an den Nähten, 95. Perzentil',
  seamStepLargest: 'Tonsprung an den Nähten, größter',
  covered: 'Bedeckter Teil des Rahmens',
  scale: 'Maßstab',

  relit:
    'Zusammengesetzt aus {1} Fotografien mit einer Lampe an ebenso vielen Orten; das Licht dazwischen ist in Anzeigetönen interpoliert.',
  foretoldBetter:
    'Ein ausgelassenes Bild wird aus den anderen auf {1} dB vorausgesagt, {2} dB besser als durch das nächste Bild.',
  foretoldWorse:
    'Ein ausgelassenes Bild wird aus den anderen auf {1} dB vorausgesagt, {2} dB schlechter als durch das nächste Bild.',
  capturedOnly:
    'Das reicht nicht, um Lampen dazwischen zu zeigen: Angeboten werden nur die aufgenommenen.',
  glints:
    'Bei {1} Lampen im Abstand von {2}° kann ein schmalerer Glanz zwischen zwei von ihnen fallen, wo kein Bild ihn sah: Er blendet von einer zur anderen über und wandert nicht. Mehr Lampen oder ein Diffusor, so breit wie ihr Abstand, fingen ihn ein.',
  relitCaution:
    'Keine Fotografie: Messen Sie hier weder Ton noch Farbe, und prüfen Sie einen Glanz oder Kratzer an den aufgenommenen Bildern.',
  slope:
    'Aus denselben Fotografien abgeleitet: wohin und wie stark sich die Oberfläche neigt, danach, wie ihre Helligkeit der Lampe folgt. Grau ist eben; die Farbe sagt, wohin sie abfällt, ihre Stärke, wie steil.',
  relief:
    'Abgeleitet: die Neigungen allein unter einer Lampe, die dort nie stand, Azimut {1}°, {2}° über der Platte, {3}. Die Töne des Bildes sind weg.',
  exaggerated: '{1}-fach überhöht',
  notExaggerated: 'nicht überhöht',
  gloss:
    'Abgeleitet: wie viel mehr Licht die hellsten Lampen geben, als eine matte Oberfläche es täte. Hell ist poliert, zerkratzt oder wie nass; Schwarz ist matt.',
  shapeCaution:
    'Neigungen sind aus dem Licht geschätzt und keine Höhenmessung: Ein Rand des Anlaufens oder eine gezeichnete Linie kann wie eine Stufe aussehen, und überstrahlte Stellen sind weniger sicher.',
  glossCaution: 'Kein Maß für den Zustand: Polierlinien, Kratzer und blanker Spiegel glänzen alle.',
  leftOut: 'Ein Bild, aus den anderen vorausgesagt',
  nearest: 'Das nächste Bild an seiner Stelle',
  kept: 'Bilder, aus den Datenebenen wieder zusammengesetzt',
  spacing: 'Abstand von einer Lampe zur nächsten',
  planes: 'Datenebenen',
  clippedOnce: 'In mindestens einem Bild überstrahlte Pixel',
  unexplained: 'Licht, das die Neigungen nicht erklären',
  strength: 'Stärke der Lampe von Bild zu Bild, Standardabweichung',
  ball: 'Glanzlichter oder Umriss der Kugel von ihrem Kreis',

  raking:
    'Abgeleitet aus {1} Streiflichtaufnahmen, gleich hell gemacht: an jedem Punkt die hellste davon ohne den Teil, den alle teilen. Was jeder Azimut gleich zeigt, das Bild auf der Platte, fällt weg; was der Lampe antwortet, bleibt.',
  rakingCaution:
    'Keine Schadenskarte: Kratzer, Staub, Polierlinien und Ränder des Anlaufens sehen hier gleich aus, und was auf jede Lampe zuläuft, fehlt. Vergleichen Sie mit den Aufnahmen.',
  rakingMedian: 'Licht, das das Streiflicht hinzufügt, in der Mitte',
  rakingHigh: 'Licht, das das Streiflicht hinzufügt, hellstes Hundertstel',
  ofWhite: '% von Weiß',
  colouring:
    'Abgeleitet aus der Aufnahme unter einer Seitenlampe und der in einem gleichmäßigen Feld: Ein Anlauffilm färbt, was die Platte streut und was sie spiegelt, in gleicher Weise, Pigment nur, was sie streut. Wo die beiden sich unterscheiden, bleibt die Farbe, wie sie ist; wo sie sich unterscheiden mögen, ist sie blasser; alles Übrige ist grau.',
  colouringCaution:
    'Keine Bestimmung eines Pigments und kein Beweis, dass eine Farbe von Hand aufgetragen wurde: Andere Beläge, die farbiges Licht streuen, sehen ebenso aus, und ein durchsichtiger Farbstoff entgeht. Wo das Anlaufen stark oder die Platte zu dunkel ist, wird nichts gesagt.',
  colouredArea: 'Farbige Fläche',
  uncertainty: 'Ihre Unsicherheit, plus oder minus',
  colouredMost: 'Farbige Fläche, höchstens (keine ist sicher)',
  colouredShare: 'Farbiger Teil der Platte',
  notJudged: 'Teil des Bildes, über den nichts gesagt werden kann, mit Umgebung',

  resolution: 'Pixel je Zoll der Platte',
  statedScale: 'der angegebene Maßstab',
  targetScale: 'der Maßstab im Bild',
  edgesScale: 'die Kanten der Platte und ihre vermerkte Größe',
  fromTarget: 'nach einem Maßstab im Bild',
  fromEdges: 'nach den Kanten der Platte',
  asStated: 'wie in der Sitzung angegeben',
  uncertaintyAssumed: '{1}, Unsicherheit angenommen',
  measuredFrom: 'gemessen {1}',
  sizeAlone:
    'nicht bekannt: Die Größe der Platte ist vermerkt, nicht aber, wo ihre Kanten im Bild liegen',
  notKnown: 'nicht bekannt',
  plateWidth: 'Breite zwischen den Kanten der Platte',
  plateHeight: 'Höhe zwischen den Kanten der Platte',
  edgesFound: 'im Bild gefundene Kanten',
  clippedImage: 'Im Bild überstrahlt',
  clippedEdge: 'Entlang der Plattenkante überstrahlt',
  insideEdges: 'innerhalb der Plattenkanten',
  wholePicture: 'das ganze Bild',
  blur: 'Unschärfe der schärfsten Kanten',
  blurEdges: '{1} Kanten, auch die von Kratzern und Staub',
  extraBlur: 'Unschärfe über die von „{1!}“ hinaus',
  bothEdges: '{1} Kanten, die beide zeigen',
  unevenness: 'Ungleichmäßigkeit des Lichts',
  blankField: 'leeres Feld {1!}: 5. bis 95. Perzentil, bezogen auf den Median',
  fallOff: 'Lichtabfall über die Platte',
  plateItself: 'die Platte selbst, gegen „{1!}“; kein leeres Feld',
  clippedMap: 'Überstrahlter Teil jedes Feldes, auf einer Übersicht des Bildes.',
  blankMap: 'Das Licht auf dem leeren Feld {1!}, ohne seine hellen Flecken.',
};
