/**
 * Millimetres in each absolute unit of CSS (CSS Values and Units 3, section 6.2): 1 in = 2.54 cm = 96 px,
 * 1 pt = 1/72 in, 1 pc = 12 pt, 1 Q = 1/4 mm.
 */
const MM_PER_CSS_UNIT: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
};

const MM_PER_PX = 25.4 / 96;

/** Two numbers of a drawing's size differ by less than this where only their last digits were rounded. */
const evenly = 1e-3;

/** How the numbers of an SVG drawing become millimetres, and what of that had to be taken for granted. */
export interface SvgScale {
  readonly xMm: number;
  readonly yMm: number;
  readonly remarks: readonly string[];
}

interface Size {
  readonly mm: number;
  /** Whether the file states a unit of length. */
  readonly stated: boolean;
}

/**
 * Millimetres of one user unit, from the root's width, height and viewBox (SVG 2, sections 8.2 and 8.3).
 *
 * @param root attributes of the outermost `svg` element
 */
export function svgScale(root: ReadonlyMap<string, string>): SvgScale | { readonly problem: string } {
  const [width, height] = [sizeOf(root.get("width")), sizeOf(root.get("height"))];
  const viewBox = root.get("viewBox");
  const plain: SvgScale = { xMm: MM_PER_PX, yMm: MM_PER_PX, remarks: [] };
  const noUnit = "the drawing states no unit of length, so that its numbers are taken as px, 96 to the inch";
  if (viewBox === undefined) return { ...plain, remarks: [noUnit] };
  const box = viewBox
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [, , across = Number.NaN, up = Number.NaN] = box;
  if (box.length !== 4 || !box.every(Number.isFinite) || across <= 0 || up <= 0)
    return {
      problem: `its viewBox "${viewBox.slice(0, 40)}" is not four numbers with a width and a height above 0`,
    };
  const sizes = [width && width.mm / across, height && height.mm / up].filter((size) => size !== undefined);
  const [first, second] = sizes;
  if (first === undefined) return { ...plain, remarks: [noUnit] };
  const remarks = width?.stated || height?.stated ? [] : [noUnit];
  if (second === undefined || Math.abs(first - second) <= evenly * first)
    return { xMm: first, yMm: second ?? first, remarks };
  if (/^\s*none\b/.test(root.get("preserveAspectRatio") ?? "")) return { xMm: first, yMm: second, remarks };
  if (/\bslice\b/.test(root.get("preserveAspectRatio") ?? ""))
    return {
      problem: "its size and its viewBox differ in proportion, and preserveAspectRatio cuts it off (slice)",
    };
  // Without `none` a drawing keeps its proportions and takes the smaller of the two (xMidYMid meet).
  const fits = Math.min(first, second);
  return {
    xMm: fits,
    yMm: fits,
    remarks: [
      ...remarks,
      "the drawing's width and height differ in proportion from its viewBox; its proportions are kept",
    ],
  };
}

/** A size on the paper; undefined where there is none that is fixed, such as 100 %. */
function sizeOf(text: string | undefined): Size | undefined {
  const { amount, unit } =
    /^\s*(?<amount>[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*(?<unit>[a-z]*)\s*$/i.exec(text ?? "")
      ?.groups ?? { amount: "", unit: "" };
  const per = MM_PER_CSS_UNIT[unit === "" ? "px" : (unit ?? "").toLowerCase()];
  const mm = Number(amount) * (per ?? Number.NaN);
  return amount !== "" && mm > 0 && Number.isFinite(mm)
    ? { mm, stated: unit !== "" && unit !== "px" }
    : undefined;
}
