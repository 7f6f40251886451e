/**
 * A shape while it is drawn by presses: two opposite corners of a rectangle, or the corners of
 * an outline one after the other. Nothing has to be dragged.
 */
import { clipRegion, type Region } from '../view-state.ts';
import { outlineRegion, rectangleBetween, type Point } from './spot-shape.ts';

export type ShapeKind = 'rectangle' | 'outline';

/** A place on the plate, and its corners where it is not a rectangle. */
export interface Shape {
  readonly region: Region | null;
  readonly outline?: readonly Point[];
}

export class ShapeDrawing {
  readonly kind: ShapeKind;
  points: readonly Point[] = [];
  /** The outline has been closed, or the rectangle has both corners. */
  finished = false;

  constructor(kind: ShapeKind) {
    this.kind = kind;
  }

  /** Set a corner; a press after the end begins again. */
  press(point: Point): void {
    this.points = [...(this.finished ? [] : this.points), point];
    this.finished = this.kind === 'rectangle' && this.points.length === 2;
  }

  /** @returns Whether there were corners enough. */
  close(): boolean {
    this.finished = this.points.length > 2;
    return this.finished;
  }

  /** What is drawn, within the frame. Only of a finished shape. */
  shape(frame: { readonly width: number; readonly height: number }): Shape {
    if (this.kind === 'rectangle')
      return { region: clipRegion(rectangleBetween(this.points[0], this.points[1]), frame) };
    return {
      region: clipRegion(outlineRegion(this.points), frame),
      outline: this.points.map(([x, y]) => [Math.round(x), Math.round(y)] as const),
    };
  }
}
