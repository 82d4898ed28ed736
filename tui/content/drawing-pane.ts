import { sceneOf } from "../../src/draw/scene.ts";
import { drawInTerminal, type Role, type TerminalDrawing } from "../../src/draw/terminal.ts";
import { bareFit } from "../../src/explore/bare-fit.ts";
import type { Fit } from "../../src/fit/fit.ts";
import type { Garment } from "../../src/garment/garment.ts";
import type { GarmentView, OpenGarment } from "../state.ts";
import type { Glyphs } from "./glyphs.ts";
import { lastFor } from "./last-for.ts";
import type { Line, Style } from "./line.ts";
import { paneTitle } from "./pane-title.ts";

/** Scrolling goes by eighths of what is in view. */
const stepsPerView = 8;

/** The piece drawn to scale with its motif; without one where nothing fits. */
export function drawingPane(
  garment: OpenGarment,
  fit: Fit | undefined,
  width: number,
  height: number,
  glyphs: Glyphs,
): readonly Line[] {
  const { view, reading, solving } = garment;
  const piece = reading.garment?.placements[view.placement]?.piece ?? "";
  const zoom = view.zoom === 0 ? "" : `, ${2 ** view.zoom} times as large`;
  const stale = fit && !solving.current ? ", before the change" : fit ? "" : ", no motif";
  const drawn = fit ?? bare(reading.garment);
  return [
    paneTitle(`${piece}${zoom}${stale}`, view.pane === "drawing", width, glyphs),
    ...(drawn ? drawingOf(drawn, piece, view, width, height - 1, glyphs) : []),
  ];
}

const scenes = lastFor(sceneOf);
const drawings = lastFor(drawInTerminal);
const bareFits = lastFor((garment: Garment, _all: "pieces") => bareFit(garment));

const bare = (garment: Garment | undefined): Fit | undefined => garment && bareFits(garment, "pieces");

function drawingOf(
  fit: Fit,
  piece: string,
  { zoom, scroll }: GarmentView,
  columns: number,
  rows: number,
  glyphs: Glyphs,
): readonly Line[] {
  // The fit that stays in view may be of a garment that had other pieces.
  if (!fit.pieces.some(({ name }) => name === piece)) return [];
  const drawing = drawings(scenes(fit, piece), {
    columns,
    rows,
    glyphs: glyphs.drawing,
    zoom: 2 ** zoom,
    scroll: { across: scroll.across / stepsPerView, up: scroll.up / stepsPerView },
  });
  return drawing.runs.map((runs): Line => runs.map((run) => ({ text: run.text, style: styleOf(run) })));
}

const styles: Readonly<Record<Role, Style>> = {
  plain: "plain",
  outline: "strong",
  strand: "first",
  mark: "dim",
  panel: "dim",
  unreachable: "dim",
  label: "dim",
};

const styleOf = ({ role, strand }: TerminalDrawing["runs"][number][number]): Style =>
  role === "strand" && strand !== undefined && strand % 2 === 1 ? "second" : styles[role];
