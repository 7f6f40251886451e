/** Tilt by stills that were mixed beforehand, where the browser cannot mix the pictures itself. */
import { reflectedLuminance, roomLight, type Room } from '../imaging/tilt.ts';
import type { StageData } from './stage-data.ts';
import type { SurfaceView } from './surface.ts';

type Stills = NonNullable<StageData['stills']>;

/** The stills are mixed for this room. */
const mixedFor = roomLight.window;

/** Number of the still whose mirror is nearest as bright as it is at a tilt in a room. */
export function nearestStill({ steps }: Stills, tilt: number, room: Room): number {
  const wanted = Math.log(reflectedLuminance(tilt, roomLight[room]));
  const off = steps.map((step) =>
    Math.abs(Math.log(reflectedLuminance(step.tilt, mixedFor)) - wanted),
  );
  return off.indexOf(Math.min(...off));
}

/** A still as a picture over the plate's frame. */
export function stillView(data: StageData, stills: Stills, n: number): SurfaceView {
  const { width, height } = data.frame;
  const picture = `${stills.folder}/${n}.webp`;
  return { id: `still-${n}`, service: stills.folder, width, height, picture };
}
