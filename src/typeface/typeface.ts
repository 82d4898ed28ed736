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
  const require = createRequire(import.meta.url);
  try {
    return {
      name: "Atkinson Hyperlegible",
      regular: require.resolve(
        "@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf",
      ),
      bold: require.resolve(
        "@expo-google-fonts/atkinson-hyperlegible/700Bold/AtkinsonHyperlegible_700Bold.ttf",
      ),
    };
  } catch {
    return undefined;
  }
}
