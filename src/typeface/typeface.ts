import { createRequire } from "node:module";

/** The files of a typeface, TrueType. */
export interface Typeface {
  readonly name: string;
  readonly regular: string;
  readonly bold: string;
}

/**
 * The open typeface that comes with the program, made for legibility (SIL Open Font License 1.1): L, I and 1 do not
 * look alike in it. Undefined where it is not installed.
 */
export function ownTypeface(): Typeface | undefined {
  const { resolve } = createRequire(import.meta.url);
  const face = (name: string): string =>
    resolve(`@expo-google-fonts/atkinson-hyperlegible/${name}/AtkinsonHyperlegible_${name}.ttf`);
  try {
    return { name: "Atkinson Hyperlegible", regular: face("400Regular"), bold: face("700Bold") };
  } catch {
    return undefined;
  }
}
