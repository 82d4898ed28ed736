import { writesUnicode } from "../../src/cli/characters.ts";
import { asciiGlyphs, type Glyphs, unicodeGlyphs } from "../content/glyphs.ts";

/** What a terminal can show, as far as its environment says. */
export interface Capabilities {
  readonly glyphs: Glyphs;
  readonly colour: boolean;
  /** `screen`: drawn over and over; `spoken`: lines for a screen reader; `plain`: only ever added to, no escapes. */
  readonly form: "screen" | "spoken" | "plain";
}

type Environment = Readonly<Record<string, string | undefined>>;

/**
 * NO_COLOR by no-color.org (set and not empty); TERM=dumb is a terminal that can neither move its cursor nor colour.
 */
export function capabilitiesOf(environment: Environment, wantsColour: boolean): Capabilities {
  const dumb = environment.TERM === "dumb";
  return {
    glyphs: writesUnicode(environment) ? unicodeGlyphs : asciiGlyphs,
    colour: wantsColour && !dumb && !environment.NO_COLOR,
    form: environment.INK_SCREEN_READER === "true" ? "spoken" : dumb ? "plain" : "screen",
  };
}
