import { ownTypeface } from "../typeface/typeface.ts";

/** A picture, and what a reader of it should know. */
export interface Picture {
  readonly png: Uint8Array;
  readonly notes: readonly string[];
}

/** Why there is no picture, in words for the knitter. */
export interface NoPicture {
  readonly problem: string;
}

/** Larger pictures take hundreds of megabytes to draw. */
const mostPixels = 60_000_000;

/**
 * An SVG document as a PNG. The renderer draws text with the fonts it finds, and without any it leaves the text out
 * silently; so the program's own typeface is used, and the system's fonts serve the letters that it lacks.
 *
 * @param widthPx width of the picture; as large as the document says where it is left out
 */
export async function svgToPng(svg: string, widthPx?: number): Promise<Picture | NoPicture> {
  const renderer = await import("@resvg/resvg-js").catch(() => undefined);
  if (!renderer)
    return {
      problem: "What draws PNGs is not installed for this system. SVG needs nothing: --output chart.svg",
    };
  const typeface = ownTypeface();
  const font = {
    fontFiles: typeface ? [typeface.regular, typeface.bold] : [],
    loadSystemFonts: true,
    ...(typeface && { defaultFontFamily: typeface.name, sansSerifFamily: typeface.name }),
  };
  const { width, height } = new renderer.Resvg(svg, { font: { loadSystemFonts: false } });
  const zoom = Math.min(
    widthPx === undefined ? 1 : widthPx / width,
    Math.sqrt(mostPixels / (width * height)),
  );
  const drawn = new renderer.Resvg(svg, {
    font,
    fitTo: { mode: "width", value: Math.round(zoom * width) },
  }).render();
  const notes = [
    ...(typeface ? [] : [noOwnFont]),
    ...(zoom < 1 && widthPx === undefined ? [madeSmaller] : []),
  ];
  return { png: drawn.asPng(), notes };
}

const noOwnFont =
  "The font that comes with the program was not found: letters may be missing from the picture.";
const madeSmaller =
  "The picture would be too large and was made smaller; one piece by itself (--piece) comes out larger.";
