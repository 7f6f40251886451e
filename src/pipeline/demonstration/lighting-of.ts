/** A recorded set-up as the renderer's lamps, surround and glass. */
import { axialLight, darkSurround, sideLight } from '../../imaging/render/lighting.ts';
import type { Lamp } from '../../imaging/render/lamp.ts';
import type { Lighting } from '../../imaging/render/photograph.ts';
import type { View } from '../../imaging/render/view.ts';
import type { LampRecord, SetupRecord } from '../../records/sitting.ts';

/** Where the lamp of one frame stood. */
export interface LampPlace {
  readonly bearing: number;
  readonly height: number;
}

/** @param place Overrides the recorded place, for a frame of a many-light set. */
export function lightingOf(setup: SetupRecord, view: View, place: LampPlace | null): Lighting {
  switch (setup.kind) {
    case 'axial':
      return axialLighting(setup, view);
    case 'transmitted':
      return {
        lamps: [],
        surround: { ...darkSurround, distance: view.distance },
        panel: 3,
        glass: null,
      };
    default:
      return sideLight(lampOf(setup.lamps[0], place), view.distance);
  }
}

function axialLighting({ lamps, glass }: SetupRecord, view: View): Lighting {
  const lamp = lamps[0] as LampRecord | undefined;
  return axialLight(
    {
      luminance: 10,
      distance: lamp?.distance ?? 420,
      half: (widthOf(lamp) ?? 280) / 2,
      slope: [0.03, 0.015],
      hotSpot: 0.015,
      glass: {
        index: glass?.index ?? 1.52,
        thickness: glass?.thickness ?? 1,
        angle: glass?.angle ?? 45,
      },
    },
    view.pixelsPerMillimetre,
  );
}

function lampOf(record: LampRecord, place: LampPlace | null): Lamp {
  return {
    bearing: place?.bearing ?? record.bearing ?? 315,
    height: place?.height ?? record.height ?? 45,
    distance: record.distance ?? 600,
    size: widthOf(record) ?? 60,
    strength: 1,
  };
}

/** Width of the lit face: the diffuser's where there is one. */
function widthOf(lamp: LampRecord | undefined): number | undefined {
  return typeof lamp?.diffuser === 'number' ? lamp.diffuser : lamp?.size;
}
