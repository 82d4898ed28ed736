import type {
  AnchorEntry,
  CordEntry,
  EaseEntry,
  LikeCableEntry,
  LikeCordEntry,
  MotifEntry,
  QuantityEntry,
} from "../garment-file.ts";
import { evaluate, holds, type Scope } from "./arithmetic.ts";
import type { Cloth } from "./cloth.ts";
import { allowedBetween, choice, fraction, highestOf } from "./entries.ts";
import { amountBeside, type Weights, weightOf } from "./weights.ts";

/** One distinct pair of needles across and rows up that a strand covers, with the cord counted for it. */
export interface CountedSegment {
  readonly needles: number;
  readonly rows: number;
  readonly spanMm: number;
  readonly pickup: number;
  readonly ease: number;
}

/** One value for every quantity of a motif and one pickup for each of its segments. */
export interface Look {
  readonly quantities: Readonly<Record<string, number>>;
  readonly leadRows: number;
  readonly repeatRows: number;
  /** Needles that the motif reaches to either side of its column's centre. */
  readonly leftReach: number;
  readonly rightReach: number;
  readonly segments: readonly CountedSegment[];
  /** Needles that one column of a cable draws the cloth in by; 0 for a cord. */
  readonly drawnIn: number;
  readonly cost: number;
}

const crossedCord: CordEntry = {
  kind: "cord",
  quantities: {
    interval: { unit: "rows", allow: "2..12", prefer: 4 },
    spread: { unit: "needles", allow: "2..20", prefer: 3 },
  },
  lead: "interval",
  repeat: "2 * interval",
  strands: {
    left: {
      start: [-1, 0],
      "lead-in": [["-spread", "interval"]],
      repeat: [
        ["spread", "interval"],
        ["-spread", "2 * interval"],
      ],
    },
    right: {
      start: [1, 0],
      "lead-in": [["spread", "interval"]],
      repeat: [
        ["-spread", "interval"],
        ["spread", "2 * interval"],
      ],
    },
  },
};

/** Every look that keeps the motif's rules and its limits of ease, each with what it costs. */
export function looksOf(motif: MotifEntry, cloth: Cloth, weights: Weights): Look[] {
  if ("kind" in motif) return cordLooks(motif, cloth, weights);
  return motif.like === "crossed cord"
    ? cordLooks(overCrossedCord(motif), cloth, weights)
    : cableLooks(motif, weights);
}

function overCrossedCord({ interval, spread, ease, rules }: LikeCordEntry): CordEntry {
  return {
    ...crossedCord,
    quantities: {
      interval: overridden(crossedCord.quantities.interval!, interval),
      spread: overridden(crossedCord.quantities.spread!, spread),
    },
    ...(ease && { ease }),
    ...(rules && { rules }),
  };
}

// A list of one's own comes with a preference of one's own or with none; a preference alone keeps the list.
function overridden(standard: QuantityEntry, entry: LikeCordEntry["interval"]): QuantityEntry {
  if (entry === undefined) return standard;
  const { allow, prefer } = choice(entry);
  return {
    ...((allow ?? standard.allow) !== undefined && { allow: allow ?? standard.allow! }),
    ...(prefer !== undefined && { prefer }),
  };
}

function cordLooks(motif: CordEntry, cloth: Cloth, weights: Weights): Look[] {
  const looks: Look[] = [];
  for (const quantities of combinations(motif.quantities)) {
    if (!(motif.rules ?? []).every((rule) => holds(rule, quantities))) continue;
    const shape = shapeOf(motif, quantities);
    const given = quantityCost(motif.quantities, quantities, weights);
    for (const segments of counted(shape.segments, motif.ease, cloth)) {
      const ease = easeCost(segments, motif.ease, weights);
      looks.push({ ...shape, quantities, segments, drawnIn: 0, cost: given + ease });
    }
  }
  return looks;
}

function cableLooks(motif: LikeCableEntry, weights: Weights): Look[] {
  const [left, right] = motif.cross ?? [2, 2];
  const offset = motif.offset ?? 0;
  const drawIn = fraction(motif["draw-in"] ?? "0 %");
  const standard = { interval: { allow: "4..12", prefer: 6 } };
  const entries = { interval: overridden(standard.interval, motif.interval) };
  return [...combinations(entries)]
    .filter((quantities) => (motif.rules ?? []).every((rule) => holds(rule, quantities)))
    .map((quantities) => ({
      quantities,
      leadRows: 0,
      repeatRows: quantities.interval!,
      leftReach: Math.max(0, left - offset),
      rightReach: Math.max(0, right + offset),
      segments: [],
      drawnIn: (left + right) * drawIn,
      cost: quantityCost(entries, quantities, weights),
    }));
}

/** Every combination of values, one for each quantity. */
function* combinations(entries: Readonly<Record<string, QuantityEntry>>): Generator<Scope> {
  const [name, ...others] = Object.keys(entries);
  if (name === undefined) {
    yield {};
    return;
  }
  const { [name]: entry, ...rest } = entries;
  const allow = entry!.allow;
  if (allow === undefined) throw new Error(`"${name}" allows nothing`);
  const values = allowedBetween(allow, 0, highestOf(allow));
  for (const value of values) {
    if (others.length === 0) yield { [name]: value };
    else for (const combination of combinations(rest)) yield { [name]: value, ...combination };
  }
}

interface Hanging {
  readonly needle: number;
  readonly row: number;
}

interface Shape {
  readonly leadRows: number;
  readonly repeatRows: number;
  readonly leftReach: number;
  readonly rightReach: number;
  readonly segments: readonly { readonly needles: number; readonly rows: number }[];
}

/** The motif's measures for one combination of quantities; throws where an anchor is no needle or no row. */
function shapeOf(motif: CordEntry, quantities: Scope): Shape {
  const leadRows = evaluate(motif.lead, quantities);
  const repeatRows = evaluate(motif.repeat, quantities);
  const needles: number[] = [];
  const segments = new Map<string, { needles: number; rows: number }>();
  for (const strand of Object.values(motif.strands)) {
    const at = (anchors: readonly AnchorEntry[], above: number): Hanging[] =>
      anchors.map(([needle, row]) => ({
        needle: evaluate(needle, quantities),
        row: above + evaluate(row, quantities),
      }));
    const path = [
      ...at([strand.start], 0),
      ...at(strand["lead-in"] ?? [], 0),
      ...at(strand.repeat, leadRows),
      ...at(strand.repeat.slice(0, 1), leadRows + repeatRows),
    ];
    for (const { needle, row } of path) {
      if (!Number.isInteger(needle) || needle === 0 || !Number.isInteger(row)) {
        throw new Error(`there is no needle ${needle}, or no row ${row}`);
      }
      needles.push(needle);
    }
    for (const [index, hanging] of path.slice(1).entries()) {
      const before = path[index]!;
      const across = Math.abs(position(hanging.needle) - position(before.needle));
      const up = hanging.row - before.row;
      if (up <= 0) throw new Error("the rows of a strand do not rise");
      segments.set(`${across} ${up}`, { needles: across, rows: up });
    }
  }
  return {
    leadRows,
    repeatRows,
    leftReach: Math.max(0, -Math.min(...needles)),
    rightReach: Math.max(0, ...needles),
    segments: [...segments.values()],
  };
}

const position = (needle: number): number => (needle > 0 ? needle - 0.5 : needle + 0.5);

/** Every way to count cord for every segment so that each one's ease is inside its limits. */
function* counted(
  segments: Shape["segments"],
  ease: EaseEntry | undefined,
  cloth: Cloth,
): Generator<CountedSegment[]> {
  const [first, ...others] = segments;
  if (!first) {
    yield [];
    return;
  }
  const stitchMm = cloth.cordStitchMm;
  if (stitchMm === undefined) throw new Error("a cord without a gauge of its own");
  const limits = limitsOf(ease);
  const spanMm = Math.sqrt((first.needles * cloth.stitchMm) ** 2 + (first.rows * cloth.rowMm) ** 2);
  const easeOf = (pickup: number): number => (pickup * stitchMm) / spanMm - 1;
  for (let pickup = 1; easeOf(pickup) <= limits.to + sameEase; pickup++) {
    if (easeOf(pickup) < limits.from - sameEase) continue;
    const segment = { ...first, spanMm, pickup, ease: easeOf(pickup) };
    for (const rest of counted(others, ease, cloth)) yield [segment, ...rest];
  }
}

/** A limit that is met exactly is met, however the last digits fall. */
const sameEase = 1e-9;

const limitsOf = (ease: EaseEntry | undefined): { from: number; to: number; prefer: number } => ({
  from: fraction(ease?.from ?? "-5 %"),
  to: fraction(ease?.to ?? "15 %"),
  prefer: fraction(ease?.prefer ?? "2 %"),
});

function easeCost(
  segments: readonly CountedSegment[],
  ease: EaseEntry | undefined,
  weights: Weights,
): number {
  const { prefer } = limitsOf(ease);
  const off = segments.reduce((total, segment) => total + Math.abs(segment.ease - prefer) * 100, 0);
  return (weightOf(weights, "ease") * off) / segments.length;
}

function quantityCost(
  entries: Readonly<Record<string, QuantityEntry>>,
  quantities: Scope,
  weights: Weights,
): number {
  return Object.entries(entries).reduce(
    (cost, [name, { prefer }]) => cost + weightOf(weights, name) * amountBeside(prefer, quantities[name]!),
    0,
  );
}
