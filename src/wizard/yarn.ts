import { MASS } from "../units/mass.ts";
import { parseMeasure } from "../units/measure.ts";
import { millimetres } from "./answers.ts";

/** The answer where nothing is to be said of the yarn. */
export const noYarn = "not known";

/** The tex of an answer, "370" or "50 g = 135 m", to three digits, as a label is known no better; undefined where there is none. */
export function texOf(answer: string): number | undefined {
  if (answer === noYarn) return undefined;
  const [weight = "", length] = answer.split(" = ");
  if (length === undefined) return Number(weight);
  const mass = parseMeasure(weight, MASS);
  const mm = millimetres(length);
  return "amount" in mass && mm !== undefined ? Number(((1e6 * mass.amount) / mm).toPrecision(3)) : undefined;
}
