/** A set-up of a sitting as light for the renderer, and the exposure that its operator would choose. */
import { axialLight, darkSurround, sideLight } from '../../imaging/render/lighting.ts';
import { type Lighting } from '../../imaging/render/photograph.ts';
import { numbersFrom } from '../../imaging/render/seeded.ts';
import { type SetupRecord } from '../../records/sitting.ts';

/** What a sitting's set-up does not say is taken as this: common practice, no source. */
const usual = { bearing: 315, height: 45, distance: 600, size: 60 } as const;

/** Luminance of highlights that the lamp gives, relative to their coverage: albedo of the particles. */
const highlightAlbedo = 0.83;

/** Signal that a full highlight, or the bare mirror in an even field, is given: 1 is the clip level. */
const targets = {
  normal: 0.85,
  raking: 0.36,
  axial: 0.74,
  transmitted: 0.85,
  lights: 0.62,
} as const;

export interface ChosenLight {
  readonly lighting: Lighting;
  /** Luminance to signal. */
  readonly gain: number;
}

export interface LightOptions {
  /** From the lens to the plate, mm. */
  readonly distance: number;
  readonly pixelsPerMillimetre: number;
  readonly density: number;
  readonly seed: number;
  /** Signal of a full highlight; the usual one where nothing is said. */
  readonly target?: number | undefined;
  /** Place of a lamp that is moved from frame to frame, degrees. */
  readonly lamp?: { readonly bearing?: number | undefined; readonly height?: number | undefined };
}

export function lightOf(setup: SetupRecord, options: LightOptions): ChosenLight {
  if (setup.kind === 'transmitted') return panelLight(options);
  if (setup.surround === 'bright' || setup.kind === 'axial') return fieldLight(setup, options);
  return lampLight(setup, options);
}

function lampLight(setup: SetupRecord, options: LightOptions): ChosenLight {
  const [first] = setup.lamps;
  const lamp = {
    bearing: options.lamp?.bearing ?? first?.bearing ?? usual.bearing,
    height: options.lamp?.height ?? first?.height ?? usual.height,
    distance: first?.distance ?? usual.distance,
    size: typeof first?.diffuser === 'number' ? first.diffuser : (first?.size ?? usual.size),
    strength: 1,
  };
  const moving = options.lamp !== undefined;
  const kind = moving ? 'lights' : setup.kind === 'raking' ? 'raking' : 'normal';
  // A lamp that moves keeps its exposure: that of its middle height.
  const height = moving ? 45 : lamp.height;
  const full = options.density * highlightAlbedo * Math.sin((height * Math.PI) / 180);
  return {
    lighting: sideLight(lamp, options.distance),
    gain: (options.target ?? targets[kind]) / full,
  };
}

function fieldLight(setup: SetupRecord, options: LightOptions): ChosenLight {
  const [source] = setup.lamps;
  const next = numbersFrom(options.seed);
  const glass = setup.glass ?? {};
  const lighting = axialLight(
    {
      luminance: 1,
      distance: source?.distance ?? 400,
      half: (source?.size ?? 280) / 2,
      // An even source is even to a few per cent.
      slope: [(2 * next() - 1) * 0.06, (2 * next() - 1) * 0.06],
      hotSpot: 0.05,
      glass: {
        index: glass.index ?? 1.52,
        thickness: glass.thickness ?? 1,
        angle: glass.angle ?? 45,
      },
    },
    options.pixelsPerMillimetre,
  );
  return { lighting, gain: (options.target ?? targets.axial) / (lighting.glass?.through ?? 1) };
}

function panelLight(options: LightOptions): ChosenLight {
  return {
    lighting: {
      lamps: [],
      surround: { ...darkSurround, luminance: 0.001, dark: 0.001, distance: options.distance },
      panel: 1,
      glass: null,
    },
    gain: (options.target ?? targets.transmitted) / 0.9,
  };
}
