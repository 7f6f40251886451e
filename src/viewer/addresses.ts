/**
 * Addresses of whole pictures in a static image service.
 *
 * References
 * - IIIF Image API 3.0, section 4 (canonical request: region, size `w,h`, rotation, quality)
 *   and 5.3 (`sizes`).
 */

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Address of the whole picture at a listed size, or the largest one. */
export function wholePicture(service: string, size: PictureSize | null): string {
  const word = size === null ? 'max' : `${size.width},${size.height}`;
  return `${service}/full/${word}/0/default.jpg`;
}

/** The smallest listed size whose longer side is at least so many pixels, else the largest. */
export function sizeAtLeast(sizes: readonly PictureSize[], longSide: number): PictureSize {
  const rising = sizes.toSorted((a, b) => a.width - b.width);
  return rising.find((s) => Math.max(s.width, s.height) >= longSide) ?? rising[rising.length - 1];
}
