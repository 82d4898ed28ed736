import { createRequire } from "node:module";

/** A picture, and what a reader of it should know. */
export interface Picture {
  readonly png: Uint8Array;
  /** Said where letters may be missing from the picture. */
  readonly note?: string;
}

/**
 * An SVG document as a PNG. The renderer draws text with the fonts it finds, and without any it leaves the text out
 * silently; so an open font made for legibility (SIL Open Font License 1.1) comes with the program, and the system's
 * fonts serve the letters that it lacks.
 *
 * @param widthPx width of the picture; as large as the document says where it is left out
 */
export async function svgToPng(svg: string, widthPx?: number): Promise<Picture> {
  const { Resvg } = await import("@resvg/resvg-js");
  const fontFiles = ownFonts();
  const image = new Resvg(svg, {
    font: {
      fontFiles: [...fontFiles],
      loadSystemFonts: true,
      ...(fontFiles.length > 0 && { defaultFontFamily: fontFamily, sansSerifFamily: fontFamily }),
    },
    ...(widthPx !== undefined && { fitTo: { mode: "width", value: widthPx } }),
  }).render();
  const note = "The font that comes with the program was not found: letters may be missing from the picture.";
  return { png: image.asPng(), ...(fontFiles.length === 0 && { note }) };
}

const fontFamily = "Atkinson Hyperlegible";

function ownFonts(): readonly string[] {
  const { resolve } = createRequire(import.meta.url);
  const folder = "@expo-google-fonts/atkinson-hyperlegible";
  try {
    return ["400Regular", "700Bold"].map((face) =>
      resolve(`${folder}/${face}/AtkinsonHyperlegible_${face}.ttf`),
    );
  } catch {
    return [];
  }
}
