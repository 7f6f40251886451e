/** The derived picture: grey, with colour where it was found. */
import { encodeSrgb } from '../colour/srgb-curve.ts';
import { colourClasses } from './beyond-tarnish.ts';
import { type ColourPicture, lightOf } from './chroma.ts';

/** Encoded RGB, 16 bits, interleaved. */
export function drawColouring(picture: ColourPicture, classes: Uint8Array): Uint16Array {
  const { red, green, blue } = picture;
  const data = new Uint16Array(3 * red.length);
  for (let i = 0; i < red.length; i += 1) {
    const grey = lightOf(picture, i);
    const share = classes[i] === colourClasses.sure ? 1 : 0;
    const colour = classes[i] === colourClasses.unsure ? 0.4 : share;
    [red[i], green[i], blue[i]].forEach((v, c) => {
      const mixed = Math.min(1, Math.max(0, grey + colour * (v - grey)));
      data[3 * i + c] = Math.round(65535 * encodeSrgb(mixed));
    });
  }
  return data;
}
