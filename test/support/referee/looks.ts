import type {
  BandEntry,
  CableEntry,
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
import { hungOver, strandsOf } from "./strands.ts";
import { amountBeside, type Weights, weightOf } from "./weights.ts";

/** One distinct pair of needles across and rows up that a strand covers, with the cord counted for it. */
interface CountedSegment {
  readonly needles: number;
  readonly rows: number;
  readonly spanMm: number;
  readonly pickup: number;
  readonly ease: number;
  /** The file's own count, where it fixes one. */
  readonly fixed: number | undefined;
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
  /** Stitches at the two ends of all columns together; only a band has them. */
  readonly edge?: readonly [left: number, right: number];
  /** Needles that one column of a cable draws the cloth in by; 0 for a cord. */
  readonly drawnIn: number;
  readonly cost: number;
}

export const crossedCord: CordEntry = {
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
  folded: ["left", "right"],
};

/**
 * Every look that keeps the motif's rules and its limits of ease, each with what it costs.
 *
 * @param oneCount one way to count the cord is enough for each set of quantities, the one with the fewest stitches
 */
export function looksOf(motif: MotifEntry, cloth: Cloth, weights: Weights, oneCount = false): Look[] {
  if ("kind" in motif) {
    if (motif.kind === "cord") return cordLooks(motif, cloth, weights, oneCount);
    return motif.kind === "cable" ? writtenCableLooks(motif, weights) : bandLooks(motif, weights);
  }
  return motif.like === "crossed cord"
    ? cordLooks(overCrossedCord(motif), cloth, weights, oneCount)
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

function cordLooks(motif: CordEntry, cloth: Cloth, weights: Weights, oneCount: boolean): Look[] {
  const looks: Look[] = [];
  for (const quantities of combinations(motif.quantities)) {
    if (!(motif.rules ?? []).every((rule) => holds(rule, quantities))) continue;
    const shape = shapeOf(motif, quantities);
    const given = quantityCost(motif.quantities, quantities, weights);
    for (const segments of counted(shape.segments, motif.ease, cloth)) {
      const ease = easeCost(segments, motif.ease, weights);
      looks.push({ ...shape, quantities, segments, drawnIn: 0, cost: given + ease });
      if (oneCount) break;
    }
  }
  return looks;
}

/** No cable stands further to the left of its column's middle. */
const widestOffset = 30;

function cableLooks(motif: LikeCableEntry, weights: Weights): Look[] {
  const [left, right] = motif.cross ?? [2, 2];
  const { allow: offsets = 0 } = choice(motif.offset);
  const drawIn = fraction(motif["draw-in"] ?? "0 %");
  const standard = { interval: { allow: "4..12", prefer: 6 } };
  const entries = { interval: overridden(standard.interval, motif.interval) };
  return [...combinations(entries)]
    .flatMap((quantities) =>
      allowedBetween(offsets, -widestOffset, highestOf(offsets)).map(
        (offset): Scope => ({ ...quantities, offset }),
      ),
    )
    .filter((quantities) => (motif.rules ?? []).every((rule) => holds(rule, quantities)))
    .map((quantities) => ({
      quantities,
      leadRows: 0,
      repeatRows: quantities.interval!,
      leftReach: Math.max(0, left - quantities.offset!),
      rightReach: Math.max(0, right + quantities.offset!),
      segments: [],
      drawnIn: (left + right) * drawIn,
      cost: quantityCost(entries, quantities, weights),
    }));
}

function writtenCableLooks(motif: CableEntry, weights: Weights): Look[] {
  const entries = motif.quantities ?? {};
  const cables: readonly NonNullable<CableEntry["cables"]>[string][] = Object.values(
    motif.cables ?? { only: motif.crossings! },
  );
  return keeping(motif.rules, entries).map((quantities) => {
    const spans = cables.flatMap((cable) => {
      const { start, "lead-in": leadIn = [], repeat } = cable;
      const cross = ("cross" in cable ? cable.cross : undefined) ?? motif.cross ?? [];
      const [left = 0, right = 0] = cross.map((stitches) => evaluate(stitches, quantities));
      return [start, ...leadIn, ...repeat].map(([middle]) => {
        const at = evaluate(middle, quantities);
        return { from: at - left, to: at + right };
      });
    });
    // A needle out of work has one in work beyond it.
    const ladders = (motif.ladders ?? []).map((ladder) => evaluate(ladder, quantities));
    return {
      quantities,
      leadRows: evaluate(motif.lead, quantities),
      repeatRows: evaluate(motif.repeat, quantities),
      leftReach: Math.max(0, ...spans.map(({ from }) => -from), ...ladders.map((needle) => 1 - needle)),
      rightReach: Math.max(0, ...spans.map(({ to }) => to), ...ladders.map((needle) => 1 + needle)),
      segments: [],
      drawnIn: 0,
      cost: quantityCost(entries, quantities, weights),
    };
  });
}

function bandLooks(motif: BandEntry, weights: Weights): Look[] {
  const entries = motif.quantities ?? {};
  return keeping(motif.rules, entries).map((quantities) => {
    const stitches = evaluate(motif.stitches, quantities);
    const [left = 0, right = 0] = (motif.edge ?? []).map((edge) => evaluate(edge, quantities));
    return {
      quantities,
      leadRows: 0,
      repeatRows: evaluate(motif.repeat, quantities),
      leftReach: Math.floor(stitches / 2),
      rightReach: Math.ceil(stitches / 2),
      edge: [left, right],
      segments: [],
      drawnIn: 0,
      cost: quantityCost(entries, quantities, weights),
    };
  });
}

const keeping = (
  rules: readonly string[] | undefined,
  entries: Readonly<Record<string, QuantityEntry>>,
): Scope[] =>
  [...combinations(entries)].filter((quantities) => (rules ?? []).every((rule) => holds(rule, quantities)));

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

interface Stretch {
  readonly needles: number;
  readonly rows: number;
  /** Cord stitches where the file fixes them, whatever the ease. */
  readonly fixed: number | undefined;
}

interface Shape {
  readonly leadRows: number;
  readonly repeatRows: number;
  readonly leftReach: number;
  readonly rightReach: number;
  readonly segments: readonly Stretch[];
}

/** The motif's measures for one combination of quantities; throws where an anchor is no needle or no row. */
function shapeOf(motif: CordEntry, quantities: Scope): Shape {
  const needles: number[] = [];
  const segments = new Map<string, Stretch>();
  for (const strand of strandsOf(motif, quantities)) {
    const path = hungOver(motif, quantities, strand, 2);
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
      const { fixed } = hanging;
      segments.set(`${across} ${up} ${fixed ?? "eased"}`, { needles: across, rows: up, fixed });
    }
  }
  return {
    leadRows: evaluate(motif.lead, quantities),
    repeatRows: evaluate(motif.repeat, quantities),
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
  if (first.fixed !== undefined) {
    const segment = { ...first, spanMm, pickup: first.fixed, ease: easeOf(first.fixed) };
    for (const rest of counted(others, ease, cloth)) yield [segment, ...rest];
    return;
  }
  const holds = (pickup: number): boolean =>
    (cloth.corners ?? []).every(({ stitchMm: across, rowMm, cordStitchMm }) => {
      const ease =
        (pickup * cordStitchMm!) / Math.sqrt((first.needles * across) ** 2 + (first.rows * rowMm) ** 2) - 1;
      return ease >= limits.from - sameEase && ease <= limits.to + sameEase;
    });
  for (let pickup = 1; easeOf(pickup) <= limits.to + sameEase; pickup++) {
    if (easeOf(pickup) < limits.from - sameEase || !holds(pickup)) continue;
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
  const eased = segments.filter(({ fixed }) => fixed === undefined);
  if (eased.length === 0) return 0;
  const off = eased.reduce((total, segment) => total + Math.abs(segment.ease - prefer) * 100, 0);
  return (weightOf(weights, "ease") * off) / eased.length;
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
