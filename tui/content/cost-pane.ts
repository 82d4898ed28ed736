import { termTitle } from "../../src/explore/holding-back.ts";
import { counted } from "../../src/report/words.ts";
import { fitShown, type OpenGarment } from "../state.ts";
import type { Glyphs } from "./glyphs.ts";
import { cell, type Line, line } from "./line.ts";
import { paneTitle } from "./pane-title.ts";

/** What the fit that is looked at gives up, term by term. */
export function costPane(
  garment: OpenGarment,
  width: number,
  height: number,
  glyphs: Glyphs,
): readonly Line[] {
  const fit = fitShown(garment);
  if (!fit) return [paneTitle("Cost", false, width, glyphs)];
  const which = garment.view.choice === 0 ? "" : " of this rival";
  const title = `Cost ${fit.cost.toFixed(3)}${which}${garment.solving.current ? "" : ", before the change"}`;
  const terms = [...fit.terms].sort((a, b) => b.cost - a.cost);
  const names = Math.max(8, ...terms.map((term) => termTitle(fit, term).length));
  const room = height - 1;
  const shown = terms.length > room ? terms.slice(0, Math.max(0, room - 1)) : terms;
  return [
    paneTitle(title, false, width, glyphs),
    ...shown.map((term) =>
      line(
        `  ${cell(termTitle(fit, term), Math.min(names, width - 34))} ${term.cost.toFixed(3).padStart(7)} = ${term.weight} x ${counted(term.amount, term.unit.replace(/s$/, ""), term.unit)}`,
      ),
    ),
    ...(terms.length > shown.length ? [line(`  and ${terms.length - shown.length} more terms`, "dim")] : []),
    ...(terms.length === 0 ? [line("  every preference is met")] : []),
  ].slice(0, height);
}
