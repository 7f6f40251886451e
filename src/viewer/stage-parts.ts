/** The places in the stage's markup that script works on. */

export interface StageParts {
  readonly well: HTMLElement;
  readonly stills: HTMLElement;
  readonly surfaces: HTMLElement;
  readonly overlay: HTMLElement;
  readonly firstName: HTMLElement;
  readonly secondName: HTMLElement;
  readonly scale: HTMLElement;
  readonly said: HTMLElement;
}

function part(root: HTMLElement, name: string): HTMLElement {
  const found = root.querySelector<HTMLElement>(`[data-part="${name}"]`);
  if (found === null) throw new Error(`The stage's markup has no part "${name}".`);
  return found;
}

export function partsOf(root: HTMLElement): StageParts {
  return {
    well: part(root, 'well'),
    stills: part(root, 'stills'),
    surfaces: part(root, 'surfaces'),
    overlay: part(root, 'overlay'),
    firstName: part(root, 'first-name'),
    secondName: part(root, 'second-name'),
    scale: part(root, 'scale'),
    said: part(root, 'said'),
  };
}

/** A control that may be absent, such as Tilt's on a plate without a pair. */
export function optional<T extends Element = HTMLElement>(
  root: Element,
  selector: string,
): T | null {
  return root.querySelector<T>(selector);
}
