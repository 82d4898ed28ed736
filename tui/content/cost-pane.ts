import { termTitle } from "../../src/explore/holding-back.ts";
import type { Fit } from "../../src/fit/fit.ts";
import type { Term } from "../../src/fit/terms.ts";
import { counted } from "../../src/report/words.ts";
import { fitShown, type OpenGarment } from "../state.ts";
import type { Glyphs } from "./glyphs.ts";
import { type Line, line } from "./line.ts";
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
  const room = height - 1;
  const shown = terms.length > room ? terms.slice(0, Math.max(0, room - 1)) : terms;
  return [
    paneTitle(title, false, width, glyphs),
    ...termLines(fit, shown, width, terms.length > shown.length ? 0 : room),
    ...(terms.length > shown.length ? [line(`  and ${terms.length - shown.length} more terms`, "dim")] : []),
    ...(terms.length === 0 ? [line("  every preference is met")] : []),
  ].slice(0, height);
}

/** So many lines all terms of a fit take with their units. */
export const costRows = (fit: Fit, width: number): number => withUnits(fit, fit.terms, width).length;

/** "ease  1.637 = 1 x 1.637 percentage points"; the unit is left out where not all of them have room for it. */
function termLines(fit: Fit, terms: readonly Term[], width: number, room: number): readonly Line[] {
  const full = withUnits(fit, terms, width);
  if (full.length <= Math.max(room, terms.length)) return full.map((text) => line(text));
  return sumsOf(fit, terms).map((sum, index) => line(`${sum}${Number(terms[index]!.amount.toFixed(3))}`));
}

function sumsOf(fit: Fit, terms: readonly Term[]): readonly string[] {
  const titles = terms.map((term) => termTitle(fit, term));
  const titleWidth = Math.max(0, ...titles.map((title) => title.length));
  return terms.map(
    ({ cost, weight }, index) =>
      `  ${titles[index]!.padEnd(titleWidth)} ${cost.toFixed(3).padStart(7)} = ${weight} x `,
  );
}

/** Broken after the amount where the unit has no room beside it. */
const withUnits = (fit: Fit, terms: readonly Term[], width: number): readonly string[] =>
  sumsOf(fit, terms).flatMap((sum, index) => {
    const { amount, unit } = terms[index]!;
    const words = counted(amount, unit.replace(/s$/, ""), unit);
    const [number, ...rest] = words.split(" ");
    return `${sum}${words}`.length <= width
      ? [`${sum}${words}`]
      : [`${sum}${number}`, `      ${rest.join(" ")}`];
  });
