/**
 * First guess: which lay, rotation, size and shift bring a capture near the base?
 *
 * Every combination of four lays and a few rotations and sizes is drawn at about 200 pixels and
 * correlated with the base; the shift comes out of the correlation. How far the highest peak
 * stands above the rest tells how good a combination is.
 */
import type { Homography } from '../conventions.ts';
import { gradientField } from './gradient-field.ts';
import { compose, translation } from './homography.ts';
import { lays, laySigns, type Lay } from './lay.ts';
import type { MaskedPlane } from './masked-plane.ts';
import {
  createCorrelator,
  highestPeak,
  type Correlator,
  type Spectrum,
} from './phase-correlation.ts';
import { warpPlane } from './warp-plane.ts';

/** One combination that is tried. */
export interface Pose {
  readonly lay: Lay;
  readonly rotationDegrees: number;
  /** Size of the moving capture's detail against the base's. */
  readonly size: number;
}

export interface Candidate extends Pose {
  /** Height of the correlation peak in standard deviations. */
  readonly z: number;
  /** Takes a pixel of the base to the moving capture, at the size searched. */
  readonly toMoving: Homography;
}

export interface SearchSettings {
  /** Side of the transform, pixels; power of two, at least as large as the planes. */
  readonly transform: number;
  /** Smoothing before the gradient, pixels; the phases of all of them are added. */
  readonly sigmas: readonly number[];
  /** Low-pass of the correlation, cycles per pixel. */
  readonly lowPass: number;
  /** Largest shift looked at, as a share of the longer side. */
  readonly reach: number;
}

/** Smoothing of the field, pixels: little, since each pixel counts at this size. */
const fieldSigma = 0.7;

/** Every lay with every rotation (degrees) and size. */
export function poses(
  rotations: readonly number[],
  sizes: readonly number[],
  only: readonly Lay[] = lays,
): readonly Pose[] {
  return only.flatMap((lay) =>
    rotations.flatMap((rotationDegrees) => sizes.map((size) => ({ lay, rotationDegrees, size }))),
  );
}

/** Map from base to moving for a pose, both turned about their centres. */
export function poseMap(pose: Pose, base: MaskedPlane, moving: MaskedPlane): Homography {
  const [sx, sy] = laySigns(pose.lay);
  const angle = (pose.rotationDegrees * Math.PI) / 180;
  const c = pose.size * Math.cos(angle);
  const s = pose.size * Math.sin(angle);
  const turned: Homography = [c * sx, -s * sy, 0, s * sx, c * sy, 0, 0, 0, 1];
  const toCentre = translation(-(base.width - 1) / 2, -(base.height - 1) / 2);
  const fromCentre = translation((moving.width - 1) / 2, (moving.height - 1) / 2);
  return compose(compose(fromCentre, turned), toCentre);
}

/** All poses with their peaks, best first. */
export function searchPoses(
  base: MaskedPlane,
  moving: MaskedPlane,
  tried: readonly Pose[],
  settings: SearchSettings,
): readonly Candidate[] {
  const correlator = createCorrelator(settings.transform, settings.lowPass);
  const reach = Math.min(
    settings.transform / 2 - 1,
    Math.round(Math.max(base.width, base.height) * settings.reach),
  );
  const still = spectra(base, settings, correlator);
  const found = tried.map((pose) => {
    const map = poseMap(pose, base, moving);
    const drawn = warpPlane(moving, map, base.width, base.height, 'linear');
    const correlation = correlator.correlate(still, spectra(drawn, settings, correlator));
    const { dx, dy, z } = highestPeak(correlation, correlator.size, reach);
    return { ...pose, z, toMoving: compose(map, translation(dx, dy)) };
  });
  return found.sort((a, b) => b.z - a.z);
}

function spectra(
  plane: MaskedPlane,
  settings: SearchSettings,
  correlator: Correlator,
): readonly Spectrum[] {
  return settings.sigmas.map((sigma) => {
    const field = gradientField(plane, sigma, fieldSigma);
    return correlator.spectrum(field, 0, 0, plane.width, plane.height);
  });
}
