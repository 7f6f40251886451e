/** A fit as the one matrix that a viewer needs: terms of a direction to base and factors. */
import type { ChosenFit } from './choose-fit.ts';

/**
 * Row-major, 3 * (planes + 1) rows of `weights.terms` numbers, as in a `lamp` layer. Rounded to
 * nine digits, which is below a hundredth of a code after the terms have cancelled.
 */
export function lampResponse({ weights, components, planes }: ChosenFit): number[] {
  const response: number[] = [];
  for (let c = 0; c < 3; c += 1) {
    for (let k = -1; k < planes; k += 1) {
      const of = k < 0 ? components.mean : components.vectors[k];
      for (let t = 0; t < weights.terms; t += 1) {
        let sum = 0;
        for (let l = 0; l < weights.lamps; l += 1) {
          sum += of[3 * l + c] * weights.matrix[l * weights.terms + t];
        }
        response.push(Number(sum.toPrecision(9)));
      }
    }
  }
  return response;
}
