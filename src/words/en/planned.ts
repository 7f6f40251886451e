/** What the planner says of a plan, in English: figures, formulas with their sources, warnings. */
import type { PlanSectionId } from '../../optics/plan/plan.ts';

export const planned = {
  figures: {
    magnification: 'Magnification',
    scale: 'Pixels on the plate',
    resolution: 'The same in pixels per inch',
    field: 'Part of the plate’s plane in the frame',
    aperture: 'Sharpest aperture for this depth',
    'depth-of-field': 'Depth within one pixel of blur',
    blur: 'All blurs together, on the plate',
    'cut-off': 'Finest period that the lens carries',
    bellows: 'Longer exposure for the drawn-out lens',
    'mirror-angle': 'The mirror sees, either side of the axis',
    mask: 'Black mask in the plane of the lens',
    hole: 'Hole in it, at most',
    'hole-on-plate': 'Dark disc that the hole leaves on the plate',
    'lamp-place': 'Bearing and height',
    'excluded-from': 'The mirror shows the lamp from a height of',
    clearance: 'The surface may lean by',
    'fall-off': 'Fall-off over the plate',
    'fall-off-two': 'The same with an equal lamp opposite',
    'level-distance': 'Distance for a third of a stop',
    'raking-height': 'Height of the lamp',
    'relief-height': 'Highest at which the slope is a quarter brighter',
    'glint-slope': 'Walls of this slope glint',
    'raking-bearings': 'Bearings that leave no scratch out',
    panel: 'Panel, at least',
    'panel-evenness': 'Its light on the particles falls off by',
    'glass-loss': 'To open against light without glass',
    ghost: 'Ghost beside the picture',
    'ghost-pixels': 'The same in pixels',
    'ghost-strength': 'Strength of the ghost',
    polarised: 'Polarised part of what comes back',
    polariser: 'A polariser on the lens changes it by',
    'frame-range': 'One frame holds',
    frames: 'Frames',
    step: 'From frame to frame',
    times: 'Times, from a middle one of 1/4 s',
    held: 'The bracket holds',
    'ring-heights': 'Heights of the rings',
    'ring-counts': 'Places in each',
    'light-distance': 'Lamp distance, constant, at least',
    'light-distance-most': 'and at most',
    ball: 'Glossy ball, diameter at least',
    'ball-precision': 'Lamp direction for one pixel on it',
    'dose-exposure': 'One exposure',
    'dose-focus': 'Focusing',
    'dose-bracket': 'The bracket',
    'dose-lights': 'The many-light set',
    'dose-all': 'The whole sitting',
    'dose-display': 'The same as on display at 50 lx for',
    'flash-guide': 'A flash in the lamp’s place: guide number (m, ISO 100)',
  } as Readonly<Record<string, string>>,

  formulas: {
    camera: [
      'm = f/(u − f); pixels per mm = m/pitch; depth 2 N c (1 + m)/m²; exposure (1 + m)². Thin lens.',
      'Aperture: the least root of the sum of squares of defocus z m/(N (1 + m)), first dark ring 2.44 λ N (1 + m)/m and pixel, λ = 550 nm (after Hansma, 1996, from memory), from f/5.6, since lenses are seldom sharp when wide open. Finest period m/(λ N (1 + m)).',
    ],
    dark: [
      'At a distance P the mirror shows plate × (D + P)/D + opening × P/D; in the plane of the lens (P = D) twice the plate and the opening. Half-angle atan(e/D). A lean of w turns the ray by 2 w. Law of reflection.',
    ],
    lamp: [
      'The plate shows the lamp where its normal halves the angle between lamp and lens. The margin is the least lean at which some place does so, less half of the lamp’s own radius.',
      'Light on the plate: z/d³ (inverse square and cosine).',
    ],
    raking: [
      'A wall of slope s is sin(h + s)/sin h times as bright as the flat: cot h = (1 + C − cos s)/sin s for a contrast C of a quarter. A wall glints at h = 90° − 2 s. Lambert; law of reflection.',
    ],
    axial: [
      'Fresnel at 45° for both polarisations; a sheet reflects 2 r/(1 + r) and passes (1 − r)/(1 + r). What comes back is the mean of the products, not the product of the means.',
      'Ghost: t sin 2i/√(n² − sin² i), strength r². Panel: as the dark surround, and a tenth. Evenness: configuration factor of a rectangle (Howell’s catalogue).',
    ],
    bracket: [
      'A frame holds from its clip level down to a signal-to-noise of 10: e/√(e + r²) = 10, with 45 000 electrons and a read noise of 4, an assumption. Steps of at most 2 stops, a third of a stop in hand.',
    ],
    lights: [
      'Level rings between 15° and 65°, places in proportion to cos h. Lamp at 2.5 to 4 diagonals: common practice, no source. One pixel on a ball of radius r is 2/r of lamp direction.',
    ],
    dose: [
      'One correct exposure: C N² (1 + m)²/ISO lux seconds, C = 250, whatever the time. 50 lx is the usual limit for the most sensitive objects (CIE 157:2004, from memory); no figure for these plates was found.',
      'A flash gives the same dose in less time: guide number = N (1 + m) d, inverse square law. With a lamp on the mains take whole hundredths of a second (50 Hz), or times of a quarter of a second and more.',
    ],
  } satisfies Record<PlanSectionId, readonly string[]>,

  warningTexts: {
    'plate-too-large': ([w, h]) =>
      `The plate does not fit: the frame holds ${w} × ${h} mm. Move the camera away, use a shorter lens, or plan a mosaic.`,
    'resolution-low': ([ppi]) =>
      `${ppi} pixels per inch is below 600, the figure of the highest level for prints (FADGI 2016). Move nearer, use a longer lens, or plan a mosaic.`,
    'depth-short': ([depth, needed]) =>
      `The depth within one pixel of blur is ${depth} mm, the plate needs ${needed} mm. Level it, or accept softer corners.`,
    'blur-over-pixels': ([pixels]) =>
      `Even at the best aperture the blurs together are ${pixels} pixels wide: more pixels than the lens can fill.`,
    'mask-large': ([w, h]) => `The mask would have to be ${w} × ${h} mm. Move the camera away.`,
    'lamp-in-mirror': ([height, limit]) =>
      `At ${height}° the plate shows the lamp to the lens. Put it below ${limit}°, or make its diffuser smaller.`,
    'lamp-in-view': () => 'The lamp stands between the lens and the plate.',
    'lamp-uneven': ([stops]) =>
      `The light falls off by ${stops} stops over the plate. Move the lamp away, add one opposite, or divide by a blank field.`,
    'relief-too-flat': ([slope, height]) =>
      `A slope of ${slope}° stands out only below ${height}°, where the plate’s own edge throws shadows. Look for it in axial light instead.`,
    'panel-large': ([w, h]) =>
      `The panel would have to be ${w} × ${h} mm. Bring it nearer, or move the camera away.`,
    'glass-in-way': ([distance]) =>
      `${distance} mm leave no room for a sheet at 45° over the plate: nearer than the plate is long.`,
    'glass-thick': ([ghost]) =>
      `The ghost lies ${ghost} mm beside the picture. Thinner glass brings it nearer; a coated sheet weakens it.`,
    'bracket-long': ([seconds]) =>
      `The longest frame takes ${seconds} s. Use more light for the whole bracket, never a wider aperture for one frame.`,
    'ring-in-mirror': ([limit]) =>
      `Lamps from ${limit}° upwards are seen in the mirror: those frames will clip.`,
    'lamp-over-lens': () =>
      'The highest lamps stand above the lens: their light may fall into it. Flag them, or shorten the string.',
    'lights-few': ([count]) =>
      `${count} places are few: 24 to 60 and more are usual for a surface to be fitted.`,
    'focus-dose': ([percent]) =>
      `Arranging and focusing are ${percent} % of the light that the plate receives. Focus on a stand-in, in less light.`,
    'dose-high': ([dose]) =>
      `${dose} lx h are more than a day of eight hours on display at 50 lx. Fewer frames, or shorter.`,
  } as Readonly<Record<string, (values: readonly string[]) => string>>,
};

export type PlannedWords = typeof planned;
