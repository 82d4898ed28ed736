import type { Wearer } from "../garment/garment.ts";
import { CORD_LIMITS } from "./cord-limits.ts";

/** Whom the rules about cords take a wearer for. */
export type WearerGroup = "young" | "older" | "grown" | "not said";

/**
 * A stated age above 14 years settles that the wearer is grown. Else age and height are each looked at, and where they
 * disagree the stricter of the two holds; a height alone is a child's up to the tallest that the standard reckons with.
 */
export function wearerGroup(wearer: Wearer | undefined): WearerGroup {
  const { ageYears, heightMm } = wearer ?? {};
  if (ageYears === undefined && heightMm === undefined) return "not said";
  const { young, older } = CORD_LIMITS;
  const upTo = ({ years, heightMm: tall }: { readonly years: number; readonly heightMm: number }): boolean =>
    (ageYears ?? Number.POSITIVE_INFINITY) <= years || (heightMm ?? Number.POSITIVE_INFINITY) <= tall;
  if (ageYears !== undefined && ageYears > older.years) return "grown";
  if (upTo(young)) return "young";
  return upTo(older) ? "older" : "grown";
}
