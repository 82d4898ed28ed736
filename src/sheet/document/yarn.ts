import type { Fit } from "../../fit/fit.ts";
import { listed } from "../../report/words.ts";
import { estimateYarn } from "../../yarn/estimate.ts";
import { paragraph, type Section } from "./document.ts";

/** The yarn to have at hand, rounded up, because yarn that runs out spoils the piece. */
export function yarnSection(fit: Fit): Section {
  const { groundMetres, groundGrams, cordMetres, cordGrams } = estimateYarn(fit);
  const amount = (metres: number, grams: number | undefined): string =>
    `about ${Math.ceil(metres)} m${grams === undefined ? "" : `, ${Math.ceil(grams)} g`}`;
  const parts = [
    `ground ${amount(groundMetres, groundGrams)}`,
    ...(cordMetres > 0 ? [`cord ${amount(cordMetres, cordGrams)}`] : []),
  ];
  return {
    title: "Yarn",
    content: [
      paragraph(
        `By the gauge alone: ${listed(parts)}. Add a tenth or more for swatch, waste and tails; weigh the swatch to be surer.`,
      ),
    ],
  };
}
