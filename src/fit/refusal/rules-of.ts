import { groundStitch } from "../../cloth/gauge.ts";
import { type Allowed, anyFrom, only } from "../../garment/allowed.ts";
import type { Garment, Match, Meeting, Piece, Placement } from "../../garment/garment.ts";
import type { Motif, Quantity } from "../../motif/motif.ts";
import { counted, listed } from "../../report/words.ts";
import { placedMotifs } from "../enumerate.ts";
import {
  farColumns,
  farEase,
  farGap,
  farQuantity,
  farRows,
  isNarrowestBest,
  leastQuantity,
  near,
} from "./far.ts";
import { onHandRules } from "./on-hand-rules.ts";
import type { NamedRule } from "./rule.ts";
import { steadyRules } from "./steady-rule.ts";
import { wearerRules } from "./wearer-rule.ts";

/** Every limit that a fit has to keep and that the file states or takes from a built-in motif. */
export const rulesOf = (garment: Garment): readonly NamedRule[] => [
  bedRule(garment),
  ...wearerRules(garment),
  ...steadyRules(garment),
  ...onHandRules(garment),
  ...garment.placements.flatMap((placement, index) => placementRules(placement, index)),
  ...placedMotifs(garment).flatMap(motifRules),
  ...garment.matches.map((match) => matchRule(garment, match)),
  ...garment.pieces
    .filter(({ name }) => garment.placements.some(({ piece }) => piece === name))
    .flatMap((piece) => lengthRules(garment, piece)),
];

function named(path: NamedRule["path"], words: string, lift: NamedRule["lift"]): NamedRule {
  return { rule: path.join("."), path, words, lift };
}

function bedRule(garment: Garment): NamedRule {
  return named(["bed", "needles"], `the bed has ${garment.bed.needles} needles`, (one) => ({
    ...one,
    bed: { ...one.bed, needles: 10_000 },
  }));
}

function placementRules(placement: Placement, index: number): readonly NamedRule[] {
  const where = `${placement.motif} on ${placement.piece}`;
  const rule = (
    keys: readonly (string | number)[],
    words: string,
    change: (placement: Placement) => Placement,
  ): NamedRule =>
    named([...placement.path, ...keys], `${where}: ${words}`, (garment) => ({
      ...garment,
      placements: garment.placements.map((one, at) => (at === index ? change(one) : one)),
    }));
  const { repeats, columns, gap, margins } = placement;
  const bottom = rule(["margins", "bottom"], `bottom margin ${inUnits(margins.bottom, "rows")}`, (one) => ({
    ...one,
    margins: { ...one.margins, bottom: anyFrom(0) },
  }));
  const top = rule(["margins", "top"], `top margin ${inUnits(margins.top, "rows")}`, (one) => ({
    ...one,
    margins: { ...one.margins, top: anyFrom(0) },
  }));
  return [
    rule(["columns"], `columns ${inWords(columns.allowed)}`, (one) => ({
      ...one,
      columns: { ...one.columns, allowed: farther(one, one.columns.allowed, farColumns, 1) },
    })),
    rule(["gap"], `gap ${inUnits(gap.allowed, "needles")}`, (one) => ({
      ...one,
      gap: { ...one.gap, allowed: farther(one, one.gap.allowed, farGap, 0) },
    })),
    ...sideRules(placement, rule),
    bottom,
    top,
    ...placement.meet.map((meeting, at) =>
      rule(meetingPath(placement, at), meetingInWords(meeting), (one) => ({
        ...one,
        meet: one.meet.filter((other) => other !== meeting),
      })),
    ),
    rule(["repeats"], `repeats ${inWords(repeats.allowed)}`, (one) => ({
      ...one,
      repeats: { ...one.repeats, allowed: anyFrom(1) },
    })),
  ];
}

/** What lifts the number of columns, or the gap between them, as far as it goes. */
function farther(placement: Placement, allowed: Allowed, distance: number, least: number): Allowed {
  if (allowed.kind === "from" || !isNarrowestBest(placement)) return near(allowed, distance, least);
  return only(least, ...allowed.values);
}

/** A single meeting need not be in a list. */
const meetingPath = ({ meet }: Placement, at: number): readonly (string | number)[] =>
  meet.length > 1 ? ["meet", at] : ["meet"];

export const meetingInWords = ({ mark, at }: Meeting): string =>
  typeof at === "string" ? `${at} at ${mark}` : `${counted(at.rows, "row")} into its repeat at ${mark}`;

function matchRule(garment: Garment, match: Match): NamedRule {
  const placements = match.placements.map((index) => garment.placements[index]!);
  const words = `${placements[0]!.motif} stands alike at ${match.mark} of ${listed(placements.map(({ piece }) => piece))}`;
  return named(match.path, words, (one) => ({
    ...one,
    matches: one.matches.filter(({ path }) => path.join() !== match.path.join()),
  }));
}

function sideRules(
  { margins: { sides } }: Placement,
  rule: (keys: readonly string[], words: string, change: (placement: Placement) => Placement) => NamedRule,
): readonly NamedRule[] {
  const withSides = (placement: Placement, changed: Placement["margins"]["sides"]): Placement => ({
    ...placement,
    margins: { ...placement.margins, sides: changed },
  });
  if (sides.kind === "centred")
    return [
      rule(["margins", "side"], `at least ${counted(sides.least, "needle")} at each side`, (one) =>
        withSides(one, { kind: "centred", least: 0 }),
      ),
    ];
  return (["left", "right"] as const).map((side) =>
    rule(["margins", side], `${side} margin ${inUnits(sides[side], "needles")}`, (one) =>
      one.margins.sides.kind === "free" ? withSides(one, { ...one.margins.sides, [side]: anyFrom(0) }) : one,
    ),
  );
}

function motifRules(motif: Motif): readonly NamedRule[] {
  const rule = (
    keys: readonly (string | number)[],
    words: string,
    change: (one: Motif) => Motif,
  ): NamedRule =>
    named([...motif.path, ...keys], `${motif.name}: ${words}`, (garment) => ({
      ...garment,
      motifs: garment.motifs.map((one) => (one.name === motif.name ? change(one) : one)),
    }));
  return [
    ...motif.rules.map(({ source }, index) =>
      rule(["rules", index], source, (one) => ({
        ...one,
        rules: one.rules.filter((other) => other.source !== source),
      })),
    ),
    ...motif.quantities.map((quantity) =>
      rule([quantity.name], `${quantity.name} ${inUnits(quantity.allowed, quantity.unit)}`, (one) => ({
        ...one,
        quantities: one.quantities.map((other) =>
          other.name === quantity.name
            ? { ...other, allowed: near(other.allowed, farQuantity(one), leastQuantity(other)) }
            : other,
        ),
      })),
    ),
    ...(motif.kind === "cord"
      ? [
          rule(
            ["ease"],
            `ease from ${percent(motif.ease.from)} to ${percent(motif.ease.to)}`,
            (one): Motif => (one.kind === "cord" ? { ...one, ease: { ...one.ease, ...farEase } } : one),
          ),
        ]
      : []),
  ];
}

function lengthRules(garment: Garment, piece: Piece): readonly NamedRule[] {
  const far = farRows * groundStitch(garment.gauge).heightMm;
  const rule = (key: "grow" | "shrink", mm: number): NamedRule =>
    named([...piece.path, key], `${piece.name} may ${key} by ${centimetres(mm)}`, (one) => ({
      ...one,
      pieces: one.pieces.map((other) =>
        other.name === piece.name
          ? { ...other, [key === "grow" ? "growMm" : "shrinkMm"]: Math.max(far, mm) }
          : other,
      ),
    }));
  return [rule("shrink", piece.shrinkMm), rule("grow", piece.growMm)];
}

const centimetres = (mm: number): string => `${Number((mm / 10).toFixed(2))} cm`;

const percent = (fraction: number): string => `${Number((100 * fraction).toFixed(2))} %`;

const oneOf: Readonly<Record<Quantity["unit"], string>> = {
  rows: "row",
  needles: "needle",
  stitches: "stitch",
  strands: "strand",
};

/** "4 rows", "1 needle", "2 to 9 stitches". */
function inUnits(allowed: Allowed, unit: Quantity["unit"]): string {
  const words = inWords(allowed);
  return `${words} ${words === "1" ? oneOf[unit] : unit}`;
}

/** "4", "2 to 9", "2, 4 or 8", "5 or more". */
export function inWords(allowed: Allowed): string {
  if (allowed.kind === "from") return `${allowed.least} or more`;
  const { values } = allowed;
  const last = values.at(-1);
  if (last === undefined) return "none";
  const [first, ...between] = values.slice(0, -1);
  if (first === undefined) return String(last);
  if (between.length > 0 && last - first === values.length - 1) return `${first} to ${last}`;
  return `${[first, ...between].join(", ")} or ${last}`;
}
