import { type Answers, millimetres, mmOf } from "./answers.ts";
import { neckOf, outlineOf } from "./outline.ts";
import { heightOf, marksOf, type WizardMark } from "./sizes.ts";

/** How much of the screen a sketch may take. */
export interface SketchRoom {
  readonly columns: number;
  readonly rows: number;
}

interface Point {
  readonly heightMm: number;
  readonly halfMm: number;
}

/** A sign of a terminal is about twice as high as wide. */
const signsHighPerWide = 2;

/**
 * The piece as the answers so far describe it, in plain signs: its edges, the rows where the motif may lie (`:`) and
 * the names of its marks. Nothing before its width and length are known.
 */
export function sketch(answers: Answers, room: SketchRoom): readonly string[] {
  const { width, height } = answers;
  if (width === undefined || height === undefined) return [];
  const isWhole = isShapeKnown(answers);
  // Until its shape is known the piece is drawn straight, and has no marks.
  const drawn: Answers = isWhole ? answers : { ...answers, shape: "straight" };
  const outline = outlineOf(drawn).map(pointOf);
  const neck = neckOf(drawn).map(pointOf);
  const heightMm = mmOf(drawn, "height");
  const widestMm = 2 * Math.max(...outline.map(({ halfMm }) => halfMm));
  const { columns, rows } = sizeIn(room, widestMm, heightMm);
  const perColumn = columns / widestMm;
  const field = fieldOf(answers);
  const at = (points: readonly Point[], line: number): number =>
    (halfAt(points, ((rows - line) / rows) * heightMm) ?? 0) * perColumn;
  const lines = Array.from({ length: rows }, (_, index) => {
    const atMm = ((rows - index - 0.5) / rows) * heightMm;
    const isField = field !== undefined && atMm > field.fromMm && atMm < field.toMm;
    return rowText({
      columns,
      half: at(outline, index + 0.5),
      widening: at(outline, index) - at(outline, index + 1),
      open: at(neck, index + 0.5),
      fill: isField ? ":" : " ",
    });
  });
  const labels = labelsOf(isWhole ? marksOf(answers) : [], heightMm, rows, `bind-off, ${height}`);
  return [
    ...lines.map((line, index) => (labels.has(index) ? `${line}  ${labels.get(index)}` : line.trimEnd())),
    `${footText(columns, at(outline, rows))}  cast-on, ${width}`,
  ];
}

const isShapeKnown = (answers: Answers): boolean =>
  answers.shape === "straight" ||
  (answers.shape === "tapered" && answers.taper !== undefined) ||
  (answers.shape === "neck" && answers["neck width"] !== undefined);

/** Half the width at a height; undefined below the first point. */
function halfAt(points: readonly Point[], atMm: number): number | undefined {
  const above = points.findIndex(({ heightMm }, index) => index > 0 && heightMm >= atMm);
  const [low, high] = [points[above - 1], points[above]];
  if (low && atMm < low.heightMm) return undefined;
  if (!low || !high) return undefined;
  const part = (atMm - low.heightMm) / (high.heightMm - low.heightMm);
  return low.halfMm + part * (high.halfMm - low.halfMm);
}

const pointOf = ({ height, width }: { readonly height: string; readonly width: string }): Point => ({
  heightMm: millimetres(height)!,
  halfMm: millimetres(width)! / 2,
});

function sizeIn({ columns, rows }: SketchRoom, widthMm: number, heightMm: number): SketchRoom {
  const wide = Math.min(columns, (rows * signsHighPerWide * widthMm) / heightMm);
  const high = Math.min(rows, (columns * heightMm) / widthMm / signsHighPerWide);
  return { columns: Math.max(6, 2 * Math.round(wide / 2)), rows: Math.max(4, Math.round(high)) };
}

interface SketchRow {
  readonly columns: number;
  /** Columns from the middle to each edge. */
  readonly half: number;
  /** By how many columns each edge moves outward from the row's bottom to its top. */
  readonly widening: number;
  /** Columns from the middle to each edge of the neck. */
  readonly open: number;
  readonly fill: string;
}

function rowText({ columns, half, widening, open, fill }: SketchRow): string {
  const [left, right] = widening > slope ? ["\\", "/"] : widening < -slope ? ["/", "\\"] : ["|", "|"];
  const outer = Math.max(1, Math.round(half));
  const inner = open > 0 ? Math.max(1, Math.round(open)) : 0;
  const side = Array.from({ length: columns / 2 }, (_, fromMiddle) => {
    if (fromMiddle >= outer || fromMiddle < inner) return " ";
    if (fromMiddle === outer - 1) return "edge";
    return inner > 0 && fromMiddle === inner ? "|" : fill;
  });
  const edged = (edge: string): readonly string[] => side.map((sign) => (sign === "edge" ? edge : sign));
  return [...edged(left).toReversed(), ...edged(right)].join("");
}

function footText(columns: number, half: number): string {
  const outer = Math.max(1, Math.round(half));
  const blank = " ".repeat(columns / 2 - outer);
  return `${blank}${"=".repeat(2 * outer)}${blank}`;
}

/** An edge that moves by less than this part of a column in one row looks straight. */
const slope = 0.2;

function fieldOf(answers: Answers): { readonly fromMm: number; readonly toMm: number } | undefined {
  return answers.from === undefined || answers.to === undefined
    ? undefined
    : { fromMm: heightOf(answers, "from"), toMm: heightOf(answers, "to") };
}

/** What is said beside each line of the sketch, by its number from the top. */
function labelsOf(
  marks: readonly WizardMark[],
  heightMm: number,
  rows: number,
  top: string,
): ReadonlyMap<number, string> {
  const labels = new Map<number, string>([[0, top]]);
  for (const { name, heightMm: atMm } of marks) {
    if (name === "cast-on" || name === "bind-off") continue;
    const index = Math.min(rows - 1, Math.max(0, Math.round(rows * (1 - atMm / heightMm))));
    labels.set(index, labels.has(index) ? `${labels.get(index)}; ${name}` : name);
  }
  return labels;
}
