/**
 * The one import of sharp, with the settings that the whole project relies on.
 *
 * - No cache: libvips keys it by path, so a file that was replaced would show its old pixels.
 * - One thread per operation: tiles are encoded side by side, each in one piece.
 */
import sharp from 'sharp';

sharp.cache(false);
sharp.concurrency(1);

export type { Metadata, Sharp } from 'sharp';
export { sharp };
