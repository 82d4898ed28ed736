import type { Fit } from "../../fit/fit.ts";
import { cautionsFor } from "../../safety/cautions.ts";
import { paragraph, type Section } from "./document.ts";

/** What can do harm; undefined where nothing does. */
export function cautionsSection(fit: Fit): Section | undefined {
  const cautions = cautionsFor(fit);
  return cautions.length === 0 ? undefined : { title: "Caution", content: cautions.map(paragraph) };
}
