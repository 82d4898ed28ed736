import type { Path } from "../../diagnostics/path.ts";
import type { Garment } from "../../garment/garment.ts";

/** A named limit of the garment file that can be lifted, to see whether it stands in the way. */
export interface NamedRule {
  /** The path in the file, joined by dots. */
  readonly rule: string;
  readonly path: Path;
  /** What it asks for, in a knitter's words. */
  readonly words: string;
  /** The garment with this limit lifted and all others kept. */
  readonly lift: (garment: Garment) => Garment;
}
