/** What a camera would have written into the file of each frame. */
import { type CameraExif } from '../../records/result.ts';
import { type CaptureRecord, type SittingRecord } from '../../records/sitting.ts';

export function exifOf(
  { date, camera }: SittingRecord,
  capture: CaptureRecord,
  seconds: number | null,
  index: number,
  number: number,
): CameraExif {
  const minutes = 12 * index + Math.floor((number * 40) / 60);
  const pad = (value: number) => String(value).padStart(2, '0');
  const clock = `${pad(10 + Math.floor(minutes / 60))}:${pad(minutes % 60)}:${pad((number * 40) % 60)}`;
  return {
    make: camera.make ?? null,
    model: camera.model ?? null,
    lens: camera.lens ?? null,
    focalLength: camera.focalLength ?? null,
    aperture: capture.exposure?.aperture ?? camera.aperture ?? null,
    iso: capture.exposure?.iso ?? camera.iso ?? null,
    seconds,
    taken: date ? `${date}T${clock}` : null,
  };
}
