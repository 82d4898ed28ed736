import { groundStitch } from "../cloth/gauge.ts";
import type { Path } from "../diagnostics/path.ts";
import { placedMotifs } from "../fit/enumerate.ts";
import type { Allowed, Preference } from "../garment/allowed.ts";
import type { Garment, Piece, Placement } from "../garment/garment.ts";
import * as limits from "../garment/read/limits.ts";
import { weightOf } from "../garment/weights.ts";
import type { Motif } from "../motif/motif.ts";
import type { GarmentRule, RuleField } from "./garment-rule.ts";

/** Every rule of a garment that a fit has to keep or is measured by, motif by motif and placement by placement. */
export const rulesFor = (garment: Garment): readonly GarmentRule[] => [
  ...placedMotifs(garment).flatMap((motif) => motifRules(garment, motif)),
  ...garment.placements.flatMap((placement, index) => placementRules(garment, placement, index)),
  ...garment.pieces
    .filter(({ name }) => garment.placements.some(({ piece }) => piece === name))
    .flatMap((piece) => pieceRules(garment, piece)),
  bedRule(garment),
];

type Parts = Omit<GarmentRule, "id" | "fields"> & { readonly fields?: readonly RuleField[] };

const rule = (parts: Parts): GarmentRule => ({
  ...parts,
  id: parts.path.join("."),
  fields: parts.fields ?? [
    "from",
    "to",
    ...(parts.weight === undefined ? [] : (["prefer", "weight"] as const)),
  ],
});

function weighted(garment: Garment, term: string): { readonly weight: GarmentRule["weight"] & object } {
  return { weight: { term, value: weightOf(garment.weights, term) } };
}

const preferred = ({ prefer }: { readonly prefer?: number }): { readonly prefer?: number } =>
  prefer === undefined ? {} : { prefer };

function motifRules(garment: Garment, motif: Motif): readonly GarmentRule[] {
  const common = { owner: motif.name, motif: motif.name };
  return [
    ...motif.quantities.map((quantity) =>
      rule({
        ...common,
        path: [...motif.path, quantity.name],
        name: quantity.name,
        unit: quantity.unit,
        allows: values(quantity.allowed, lowestOf(quantity.allowed)),
        ...preferred(quantity),
        ...weighted(garment, quantity.name),
      }),
    ),
    ...(motif.kind === "cord"
      ? [
          rule({
            ...common,
            path: [...motif.path, "ease"],
            name: "ease",
            unit: "%",
            allows: { kind: "ease", from: motif.ease.from, to: motif.ease.to },
            ...preferred(motif.ease),
            ...weighted(garment, "ease"),
          }),
        ]
      : []),
    ...motif.rules.map(({ source }, index) =>
      rule({
        ...common,
        path: [...motif.path, "rules", index],
        name: "comparison",
        unit: "",
        allows: { kind: "comparison", source },
        fields: ["from"],
      }),
    ),
  ];
}

/** Places on the bed may be negative; where none is, none is meant to be. */
const lowestOf = (allowed: Allowed): number =>
  allowed.kind === "list" && (allowed.values[0] ?? 0) < 0 ? limits.signedCountOf.least : 0;

const values = (allowed: Allowed, least: number): GarmentRule["allows"] => ({
  kind: "values",
  allowed,
  least,
  most: limits.countOf.most,
});

function placementRules(garment: Garment, placement: Placement, index: number): readonly GarmentRule[] {
  const common = {
    owner: `${placement.motif} on ${placement.piece}${twin(garment, placement, index)}`,
    placement: index,
  };
  const quantity = (name: string, unit: string, preference: Preference, least: number): GarmentRule =>
    rule({
      ...common,
      path: [...placement.path, name],
      name,
      unit,
      allows: values(preference.allowed, least),
      ...preferred(preference),
      ...weighted(garment, name),
    });
  const margin = (side: string, unit: string, allowed: Allowed): GarmentRule =>
    rule({
      ...common,
      path: [...placement.path, "margins", side],
      name: `${side} margin`,
      unit,
      allows: values(allowed, 0),
      // How far bottom and top differ is one term for the two of them, and has no preference but none.
      ...(unit === "rows" && weighted(garment, "balance")),
      fields: unit === "rows" ? ["from", "to", "weight"] : ["from", "to"],
    });
  const { repeats, columns, gap, margins } = placement;
  return [
    quantity("repeats", "repeats", repeats, 1),
    quantity("columns", "columns", columns, 1),
    ...(mayHaveGap(columns.allowed) ? [quantity("gap", "needles", gap, 0)] : []),
    margin("bottom", "rows", margins.bottom),
    margin("top", "rows", margins.top),
    ...(margins.sides.kind === "centred"
      ? [
          rule({
            ...common,
            path: [...placement.path, "margins", "side"],
            name: "side margin",
            unit: "needles",
            allows: { kind: "least", value: margins.sides.least },
            fields: ["from"],
          }),
        ]
      : [margin("left", "needles", margins.sides.left), margin("right", "needles", margins.sides.right)]),
  ];
}

/** With one column there is no gap to rule. */
const mayHaveGap = (columns: Allowed): boolean =>
  columns.kind === "from" || columns.values.some((value) => value > 1);

/** Tells two placements of one motif on one piece apart. */
const twin = (garment: Garment, { motif, piece }: Placement, index: number): string =>
  garment.placements.some((other, at) => at !== index && other.motif === motif && other.piece === piece)
    ? ` (${index + 1})`
    : "";

function pieceRules(garment: Garment, piece: Piece): readonly GarmentRule[] {
  const rowMm = groundStitch(garment.gauge).heightMm;
  const change = (name: "grow" | "shrink", mm: number): GarmentRule =>
    rule({
      owner: piece.name,
      path: [...piece.path, name] satisfies Path,
      name,
      unit: "",
      allows: { kind: "length", mm, rowMm },
      ...weighted(garment, "length"),
      fields: ["to", "weight"],
    });
  return [change("grow", piece.growMm), change("shrink", piece.shrinkMm)];
}

const bedRule = ({ bed }: Garment): GarmentRule =>
  rule({
    owner: "bed",
    path: ["bed", "needles"],
    name: "needles",
    unit: "needles",
    allows: {
      kind: "most",
      value: bed.needles,
      least: limits.bedNeedles.least,
      greatest: limits.bedNeedles.most,
    },
    fields: ["to"],
  });
