import type { Fit } from "../../fit/fit.ts";
import { cautionsFor } from "../../safety/cautions.ts";
import { paragraph, type Section } from "./document.ts";

/** What can do harm; undefined where nothing does. */
export function cautionsSection({ garment }: Fit): Section | undefined {
  const cautions = cautionsFor(garment);
  return cautions.length === 0 ? undefined : { title: "Caution", content: cautions.map(paragraph) };
}
