import type { Stitch } from "../cloth/gauge.ts";
import type { Mark, NeckStation, Station } from "../garment/garment.ts";
import { inCentimetres } from "../report/words.ts";
import { type Choices, chosen } from "./chosen.ts";
import type {
  Measurement,
  NeckDescription,
  ShapeDescription,
  ShapeRule,
  ShapeStation,
} from "./description.ts";
import { type Given, type Measuring, measuring, type Taken } from "./measuring.ts";
import { neckStations } from "./neck.ts";
import { NECKS } from "./necks/index.ts";
import { outlineStations } from "./outline.ts";
import { sumName } from "./sums.ts";
import { ShapeStop, type ShapeTrouble } from "./trouble.ts";

/** A piece's form, in mm, as a garment has it. */
export interface MadeShape {
  readonly outline: readonly Station[];
  /** Empty where there is no neckline. */
  readonly neck: readonly NeckStation[];
  readonly marks: readonly Mark[];
  /** What was reckoned with and does not stand in the file. */
  readonly taken: readonly Taken[];
}

/** What the file says of a shape, beside which shape it is. */
export type ShapeMeasures = Omit<Given, "shape" | "measurements">;

/** The measurements that a shape takes: its own, and the depth of its neckline where it has one. */
export function measurementsOf(
  description: ShapeDescription,
  choices: Choices,
): Readonly<Record<string, Measurement>> {
  const style = styleOf(choices);
  if (!style) return description.measurements;
  const depth = {
    means: "from the shoulders down to the lowest point of the neck",
    otherwise: style.neck.depth,
  };
  return { ...description.measurements, [NECK_DEPTH]: depth };
}

const NECK_DEPTH = "neck depth";
const NECK_WIDTH = "neck width";

/** The outline, the neckline and the marks of a shape; or why it can't be made. */
export function makeShape(
  name: string,
  description: ShapeDescription,
  measures: ShapeMeasures,
): MadeShape | { readonly trouble: ShapeTrouble } {
  const measurements = measurementsOf(description, measures.choices);
  const measure = measuring({ ...measures, shape: name, measurements });
  try {
    return made(name, description, measures, measure);
  } catch (stop) {
    if (stop instanceof ShapeStop) return { trouble: stop.trouble };
    throw stop;
  }
}

function made(
  name: string,
  description: ShapeDescription,
  { choices, stitch }: ShapeMeasures,
  measure: Measuring,
): MadeShape {
  const rules = (description.rules ?? []).filter(({ when = {} }) =>
    Object.entries(when).every(([key, word]) => choices.get(key) === word),
  );
  const described = chosen(description.outline, choices) ?? [];
  const style = styleOf(choices);
  measure.require([
    ...described.flatMap(sumsOf),
    ...rules.flatMap(({ less, than }) => [less, than]),
    ...Object.values(description.marks),
    ...(style ? [sumName(NECK_WIDTH), sumName(NECK_DEPTH)] : []),
  ]);
  for (const rule of rules) checkRule(rule, name, measure);
  const outline = outlineStations(described, name, measure.sum, stitch);
  const topMm = outline.at(-1)!.heightMm;
  return {
    outline,
    neck: style ? neckOfStyle(style, topMm, measure, stitch) : [],
    marks: Object.entries(description.marks).map(([mark, height]) =>
      markAt(mark, measure.sum(height), topMm),
    ),
    taken: measure.taken(),
  };
}

const sumsOf = (station: ShapeStation): readonly string[] =>
  "width" in station ? [station.height, station.width] : [station.height, station.left, station.right];

function neckOfStyle(
  style: Style,
  topMm: number,
  measure: Measuring,
  stitch: Stitch,
): readonly NeckStation[] {
  const place = {
    style: style.name,
    widthMm: measure.length(NECK_WIDTH),
    depthMm: measure.length(NECK_DEPTH),
    topMm,
  };
  return neckStations(style.neck, place, stitch);
}

/** The neckline that a shape has, by its name. */
interface Style {
  readonly name: string;
  readonly neck: NeckDescription;
}

function styleOf(choices: Choices): Style | undefined {
  const name = choices.get("neck");
  const neck = name === undefined ? undefined : NECKS.get(name);
  return name !== undefined && neck ? { name, neck } : undefined;
}

function markAt(name: string, heightMm: number, topMm: number): Mark {
  if (heightMm >= 0 && heightMm <= topMm) return { name, heightMm };
  throw new ShapeStop({
    code: "shape-impossible",
    message: `the mark ${name} would lie ${heightMm < 0 ? "below" : "above"} the piece`,
    found: inCentimetres(heightMm),
    expected: `a height from 0 cm to ${inCentimetres(topMm)}`,
    blame: [name, "length"],
  });
}

function checkRule(rule: ShapeRule, shape: string, measure: Measuring): void {
  const [lessMm, thanMm] = [measure.sum(rule.less), measure.sum(rule.than)];
  if (lessMm < thanMm || (rule.orSame && lessMm === thanMm)) return;
  throw new ShapeStop({
    code: "shape-impossible",
    message: `this ${shape} can't be made: ${rule.trouble}`,
    found: `${inCentimetres(lessMm)} beside ${inCentimetres(thanMm)}`,
    expected: rule.right,
    blame: rule.blame,
  });
}
