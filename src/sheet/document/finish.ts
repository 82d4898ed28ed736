import { type Fit, lookOf } from "../../fit/fit.ts";
import { paragraph, type Section } from "./document.ts";

/** What is done once the pieces are off the machine. */
export const finishSection = (fit: Fit): Section => ({
  title: "Finish",
  content: [
    ...(fit.placements.some(({ motif }) => lookOf(fit, motif).motif.kind === "cord")
      ? [paragraph("Take the cord's ends through to the back and sew them in; leave none hanging free.")]
      : []),
    paragraph(
      "Wash and rest the pieces as you did the swatch, then compare their width and length with the finished measurements.",
    ),
  ],
});
