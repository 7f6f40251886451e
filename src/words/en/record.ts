/**
 * What the stages write into a record, sentence by sentence, as they write it. A page in another
 * language says it by these: `{1}` is a number, or words that are a sentence here themselves;
 * `{1!}` stays as it is. A sentence that is missing here is shown in English and marked so.
 */
export const record = {
  // Captures (src/pipeline/combine/captures.ts).
  one: 'One photograph',
  frame: 'Frame {1} of a set of {2}',
  base: '{1}. It defines the frame that the others are aligned to.',
  part: '{1}, as it was taken; it shows a small part of the base.',
  placed: '{1}, resampled into the frame of the base; off by at most {2} px.',
  bent: '{1}, resampled into the frame of the base, with a radial correction for a changed focus or lens; off by at most {2} px.',
  smaller:
    '{1}, resampled into the frame of the base, at {2} % of its pixels each way as the capture has no more; off by at most {3} px of the base.',
  smallerBent:
    '{1}, resampled into the frame of the base, at {2} % of its pixels each way as the capture has no more, with a radial correction for a changed focus or lens; off by at most {3} px of the base.',
  failed: '{1}, as it was taken; it could not be aligned to the base.',
  notMeasured: '{1}, as it was taken; its place in the base frame was not measured.',
  closeUps: 'Close-ups of a mosaic each have a place of their own.',
  fast: 'fast',
  weak: 'weak',
  controlPoints: 'control points',

  // Brackets (bracket-views.ts).
  merged: '{1} exposures merged {2}, each weighed by its predicted noise.',
  mergedPlaced:
    '{1} exposures merged {2}, each weighed by its predicted noise, laid into the frame of the base.',
  mergedMoved:
    '{1} exposures merged {2}, each weighed by its predicted noise; {3} of them had moved and were shifted.',
  mergedMovedPlaced:
    '{1} exposures merged {2}, each weighed by its predicted noise; {3} of them had moved and were shifted, laid into the frame of the base.',
  byProfile: 'in linear light by the files’ profile',
  byResponse: 'after the camera’s response was recovered from the frames themselves',
  byAssumption: 'with the sRGB curve assumed, for the files carry no profile',
  oneCurve: 'Shown as a rendering with one curve for the whole picture.',
  localCurve:
    'Shown as a local rendering: what changes slowly over the plate is compressed, fine detail is kept.',
  rendering:
    'A rendering for the eye: its tones are compressed, and must not be measured or compared with another plate’s. The merged light is in the archive file.',
  neighbourhood: 'Light and dark are only comparable within a small neighbourhood.',
  heldRange: 'Range held between noise and clipping',
  usedRange: 'Range of the plate, darkest to brightest thousandth',
  clippedEverywhere: 'Clipped in every frame',
  belowNoise: 'Below the noise in every frame',
  exposureError: 'Largest error of a marked step',
  frameShift: 'Largest shift between frames',
  stops: 'stops',

  // Mosaics (mosaic.ts).
  joined:
    '{1} overlapping close-ups, joined: all were placed at once by {2} points that neighbours share, balanced in tone, and cut where they differ least. Each is resampled once, {3}.',
  onBase:
    'and lies in the frame of the base at {1} times its pixels, off by at most {2} px of the base',
  ownFrame: 'and keeps a frame of its own, since it could not be laid on the base',
  seams:
    'Tones were balanced between the close-ups: do not compare brightness across a seam. Use a single close-up for measuring light, and for anything finer than the residual below.',
  sharedPoints: 'Median residual of shared points',
  worstPair: 'Residual of the worst pair',
  pairs: 'Pairs that agree',
  of: 'of {1}',
  seamStep: 'Seam step, 95th percentile',
  seamStepLargest: 'Seam step, largest',
  covered: 'Part of the frame covered',
  scale: 'Scale',

  // Lights (lights/words.ts).
  relit:
    'Put together from {1} photographs with one lamp in as many places; the light between them is interpolated in display tones.',
  foretoldBetter:
    'A frame left out is foretold from the others to {1} dB, {2} dB better than by the nearest frame.',
  foretoldWorse:
    'A frame left out is foretold from the others to {1} dB, {2} dB worse than by the nearest frame.',
  capturedOnly: 'That is too little to show lamps in between: only the captured ones are offered.',
  glints:
    'With {1} lamps {2}° apart, a glint narrower than that may fall between two of them, where no frame saw it: it fades from one to the other and does not wander. More lamps, or a diffuser as wide as the spacing, would catch it.',
  relitCaution:
    'Not a photograph: do not measure tone or colour here, and check a glint or a scratch against the captured frames.',
  slope:
    'Derived from the same photographs: which way the surface slopes and how much, from how its brightness follows the lamp. Grey is level; the colour tells which way it falls, its strength how steeply.',
  relief:
    'Derived: the slopes alone under a lamp that never stood there, from bearing {1}° at {2}° above the plate, {3}. The tones of the picture are gone.',
  exaggerated: 'exaggerated {1} times',
  notExaggerated: 'not exaggerated',
  gloss:
    'Derived: how much more light the brightest lamps give than a matte surface would. Bright is polished, scratched or wet-looking; black is matte.',
  shapeCaution:
    'Slopes are estimates from light and not a measurement of height: a tarnish edge or a drawn line can look like a step, and clipped places are less certain.',
  glossCaution: 'Not a measure of condition: polishing lines, scratches and bare mirror all shine.',
  leftOut: 'A frame foretold from the others',
  nearest: 'The nearest frame in its place',
  kept: 'Frames put together again from the planes',
  spacing: 'Distance from a lamp to the next',
  planes: 'Data planes',
  clippedOnce: 'Pixels clipped in at least one frame',
  unexplained: 'Light that the slopes leave unexplained',
  strength: 'Lamp strength from frame to frame, standard deviation',
  ball: 'Highlights or outline of the ball from its circle',

  // Raking and hand colouring (raking-words.ts, hand-colouring-words.ts).
  raking:
    'Derived from {1} raking captures, made equally bright: at each point the brightest of them less the part that all share. What every bearing shows alike, the picture on the plate, falls away; what answers to the lamp remains.',
  rakingCaution:
    'Not a map of damage: scratches, dust, polishing lines and the edges of tarnish look alike here, and what runs towards every lamp is missing. Compare with the captures.',
  rakingMedian: 'Light that raking adds, in the middle',
  rakingHigh: 'Light that raking adds, brightest hundredth',
  ofWhite: '% of white',
  colouring:
    'Derived from the capture under a side lamp and the one in an even field: a film of tarnish colours what the plate scatters and what it mirrors alike, pigment only what it scatters. Where the two differ the colour is left as it is, where they may differ it is paler, all else is grey.',
  colouringCaution:
    'Not an identification of pigment, and not proof that a colour was laid on by hand: other deposits that scatter coloured light look the same, and a transparent dye is missed. Where tarnish is strong or the plate too dark, nothing is told.',
  colouredArea: 'Coloured area',
  uncertainty: 'Its uncertainty, plus or minus',
  colouredMost: 'Coloured area, at most (none is sure)',
  colouredShare: 'Part of the plate that is coloured',
  notJudged: 'Part of the picture where nothing can be told, surroundings included',

  // Measurements (src/pipeline/inspect/inspection-record.ts).
  resolution: 'Pixels per inch of plate',
  statedScale: 'the stated scale',
  targetScale: 'the scale in the picture',
  edgesScale: 'the plate’s edges and its recorded size',
  fromTarget: 'from a scale in the picture',
  fromEdges: 'from the edges of the plate',
  asStated: 'as stated in the sitting',
  uncertaintyAssumed: '{1}, uncertainty assumed',
  measuredFrom: 'measured {1}',
  sizeAlone:
    'not known: the size of the plate is recorded, but not where its edges lie in the picture',
  notKnown: 'not known',
  plateWidth: 'Width between the plate’s edges',
  plateHeight: 'Height between the plate’s edges',
  edgesFound: 'edges found in the picture',
  clippedImage: 'Clipped on the image',
  clippedEdge: 'Clipped along the plate’s edge',
  insideEdges: 'inside the plate’s edges',
  wholePicture: 'the whole picture',
  blur: 'Blur of the sharpest edges',
  blurEdges: '{1} edges, with those of scratches and dust',
  extraBlur: 'Blur beyond that of "{1!}"',
  bothEdges: '{1} edges that both show',
  unevenness: 'Unevenness of the light',
  blankField: 'blank field {1!}: 5th to 95th percentile over the median',
  fallOff: 'Fall-off of the light over the plate',
  plateItself: 'the plate itself, against "{1!}"; no blank field',
  clippedMap: 'Clipped part of each field, on an overview of the picture.',
  blankMap: 'The light on the blank field {1!}, without its hot spots.',
};

export type RecordWords = Readonly<Record<keyof typeof record, string>>;
