import { position } from "../../cloth/bed.ts";
import type { ClothPoint } from "../scene/place.ts";
import type { Scene } from "../scene.ts";
import type { Sight, View } from "../view.ts";
import { sightOf } from "../view.ts";
import type { Pixel } from "./element.ts";

/** Everything that the parts of one chart share: the scene, how it is looked at, and where things come to stand. */
export interface Paper {
  readonly scene: Scene;
  readonly view: View;
  readonly sight: Sight;
  /** Sets apart the ids of charts that share a document. */
  readonly id: string;
  /** One stitch, in pixels. */
  readonly cell: { readonly width: number; readonly height: number };
  /** Usual size of text. */
  readonly text: number;
  /** The rectangle that holds the cells. */
  readonly plot: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly at: (point: ClothPoint) => Pixel;
  readonly boundary: (boundary: number, row: number) => Pixel;
  readonly needle: (needle: number, row: number) => Pixel;
}

export interface PaperWishes {
  readonly view: View;
  readonly id: string;
  /** Pixels for one millimetre of cloth. */
  readonly scale: number;
  readonly text: number;
  /** Where the plot's left and top edge lie. */
  readonly left: number;
  readonly top: number;
}

export function paperFor(scene: Scene, { view, id, scale, text, left, top }: PaperWishes): Paper {
  const sight = sightOf(scene, view);
  const cell = { width: scene.stitch.widthMm * scale, height: scene.stitch.heightMm * scale };
  const { from, to } = scene.widest;
  const outermost = sight.mirrored ? -to : from;
  const plot = {
    left,
    right: left + (to - from) * cell.width,
    top,
    bottom: top + scene.rows * cell.height,
  };
  const boundary = (at: number, row: number): Pixel => ({
    x: left + (sight.sign * at - outermost) * cell.width,
    y: plot.bottom - row * cell.height,
  });
  return {
    scene,
    view,
    sight,
    id,
    cell,
    text,
    plot,
    boundary,
    needle: (needle, row) => boundary(position(needle), row),
    at: ({ xMm, yMm }) => boundary(xMm / scene.stitch.widthMm, yMm / scene.stitch.heightMm),
  };
}
