import type { PieceEntry, StationEntry } from "../garment-file.ts";
import type { Cloth } from "../referee/cloth.ts";
import type { Dice } from "./dice.ts";
import { asLength, distanceOf, heightOf, widthOf } from "./measure.ts";

/** A piece and the marks that the field for its motif lies between. */
export interface RandomPiece {
  readonly entry: PieceEntry;
  readonly from: string;
  readonly to: string;
  /** On a straight piece, the mark halfway between the two. */
  readonly middle: string;
  /** The widest half, in needles. */
  readonly widest: number;
}

export interface PieceWishes {
  /** Rows between the marks. */
  readonly fieldRows: number;
  /** Needles on each side at the narrowest place of the field. */
  readonly half: number;
  readonly neck: boolean;
  readonly asymmetrical: boolean;
  readonly straight: boolean;
  /** Whether it leans to one side above the field, as far as wholly beyond the centre line. */
  readonly leaning?: boolean;
  readonly evenRows?: boolean;
}

interface Corner {
  readonly row: number;
  readonly left: number;
  readonly right: number;
}

export function randomPiece(dice: Dice, cloth: Cloth, wishes: PieceWishes): RandomPiece {
  const low = dice.chance(25) ? 0 : dice.whole(3, 14);
  const high = low + wishes.fieldRows;
  const neck = wishes.neck && wishes.half >= 7;
  const above = neck ? dice.whole(12, 24) : dice.chance(30) ? 0 : dice.whole(4, 24);
  const field = fieldCorners(dice, wishes, high);
  const shaped = [...field, ...cornersAbove(dice, field.at(-1)!, high, above, neck || wishes.straight)];
  const beside = wishes.asymmetrical ? lopsided(dice, shaped) : shaped;
  const leans = wishes.leaning === true && !neck && !wishes.straight;
  const corners = leans ? [...beside, leaning(dice, beside.at(-1)!)] : beside;
  const opening = neck ? openingOf(dice, cloth, corners, high, above) : undefined;
  const hasMark = above > 0 || leans;
  const [lowMark, middle] = [dice.pick(["rib top", "cuff", "hem"]), "waist"];
  const highMark = dice.pick(["underarm", "yoke", "shoulder"]);
  const marks = {
    ...(low > 0 && { [lowMark]: low }),
    ...(opening?.mark !== "neck" && hasMark && { [highMark]: high }),
    ...(wishes.straight && { [middle]: low + Math.round(wishes.fieldRows / 2) }),
  };
  const entry: PieceEntry = {
    outline: corners.map((corner) => stationOf(dice, cloth, corner, wishes.asymmetrical || leans)),
    ...(Object.keys(marks).length > 0 && {
      marks: Object.fromEntries(
        Object.entries(marks).map(([name, row]) => [name, heightOf(Number(row), cloth, dice)]),
      ),
    }),
    ...(opening && { neck: opening.stations }),
    ...(wishes.evenRows && { shaping: "even rows" as const }),
    ...changeOf(dice, cloth, wishes.fieldRows),
  };
  return {
    entry,
    from: low > 0 ? lowMark : "cast-on",
    to: opening?.mark ?? (hasMark ? highMark : "bind-off"),
    middle,
    widest: Math.max(...corners.flatMap(({ left, right }) => [left, right])),
  };
}

const corner = (row: number, half: number): Corner => ({ row, left: half, right: half });

/** The outline from the cast-on edge to the end of the field, never narrower than was wished. */
function fieldCorners(dice: Dice, { half, straight, fieldRows }: PieceWishes, high: number): Corner[] {
  const middle = high - Math.round(fieldRows / dice.pick([2, 3]));
  const wider = half + dice.whole(1, Math.max(1, Math.floor(fieldRows / 8)));
  const step = half + dice.whole(2, 5);
  const shapes: readonly Corner[][] = [
    [corner(0, half), corner(high, half)],
    [corner(0, half), corner(high, wider)],
    [corner(0, wider), corner(high, half)],
    [corner(0, wider), corner(middle, half), corner(high, wider)],
    [corner(0, half), corner(middle, wider), corner(high, half)],
    [corner(0, step), corner(middle, step), corner(middle, half), corner(high, half)],
    [corner(0, half), corner(middle, half), corner(middle, step), corner(high, step)],
  ];
  return straight ? shapes[0]! : dice.pick(shapes);
}

function cornersAbove(dice: Dice, below: Corner, high: number, above: number, plain: boolean): Corner[] {
  if (above === 0) return [];
  const half = below.left;
  if (plain || half < 7 || dice.chance(40)) return [corner(high + above, half)];
  if (dice.chance(50)) return [corner(high + above, half - dice.whole(1, Math.floor(above / 4)))];
  const stepped = dice.chance(70) ? half - dice.whole(2, 4) : half + dice.whole(2, 4);
  return [corner(high, stepped), corner(high + above, stepped)];
}

/** One side further out than the other, by the same everywhere or by a little more at the top. */
function lopsided(dice: Dice, corners: readonly Corner[]): Corner[] {
  const out = dice.whole(1, 4);
  const more = dice.whole(0, 1);
  const top = corners.at(-1)!.row;
  return corners.map(({ row, left, right }) => ({
    row,
    left: left + (row === top ? more : 0),
    right: right + out,
  }));
}

/** Both edges go to one side, by up to two needles a row, and by so much that neither may be left of the other side. */
function leaning(dice: Dice, { row, left, right }: Corner): Corner {
  const shift = dice.whole(Math.max(2, left), left + right);
  const up = row + Math.max(8, Math.ceil(shift / dice.pick([0.5, 1, 2])));
  return dice.chance(50)
    ? { row: up, left: left - shift, right: right + shift }
    : { row: up, left: left + shift, right: right - shift };
}

interface Opening {
  readonly mark: string | undefined;
  readonly stations: NonNullable<PieceEntry["neck"]>;
}

function openingOf(
  dice: Dice,
  cloth: Cloth,
  corners: readonly Corner[],
  high: number,
  above: number,
): Opening {
  const atField = dice.chance(60);
  const row = atField ? high : high + dice.whole(1, above - 8);
  const top = high + above;
  const room = Math.min(...corners.filter((at) => at.row >= high).map(({ left }) => left)) - 3;
  const half = dice.whole(1, Math.min(room, 5));
  const wider = Math.min(room, half + dice.whole(0, Math.floor((top - row) / 3)));
  return {
    mark: atField ? "neck" : undefined,
    stations: [
      { height: heightOf(row, cloth, dice), width: widthOf(half, cloth, dice) },
      { height: heightOf(top, cloth, dice), width: widthOf(wider, cloth, dice) },
    ],
  };
}

function stationOf(dice: Dice, cloth: Cloth, at: Corner, asymmetrical: boolean): StationEntry {
  const height = heightOf(at.row, cloth, dice);
  return asymmetrical
    ? { height, left: distanceOf(at.left, cloth, dice), right: distanceOf(at.right, cloth, dice) }
    : { height, width: widthOf(at.left, cloth, dice) };
}

function changeOf(dice: Dice, cloth: Cloth, fieldRows: number): { grow?: string; shrink?: string } {
  const mostShrink = Math.min(20, Math.floor((fieldRows / 3) * cloth.rowMm));
  return {
    ...(dice.chance(60) && { grow: asLength(dice.whole(0, 20), dice) }),
    ...(dice.chance(60) && { shrink: asLength(dice.whole(0, mostShrink), dice) }),
  };
}
