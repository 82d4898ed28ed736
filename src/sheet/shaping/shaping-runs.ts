import { needleCount } from "../../cloth/bed.ts";
import type { Side } from "../../garment/garment.ts";
import type { Action, SheetPiece } from "../sheet.ts";

/** Above a neck a piece is worked in two halves, one after the other. */
export type Block = "whole" | "first half" | "second half";

/** One step of shaping. */
export interface ShapingStep {
  /** Rows knitted when it is done. */
  readonly row: number;
  readonly needles: number;
}

/** Steps of one kind that follow one another at one edge, or alike at both sides. */
export interface ShapingRun {
  readonly block: Block;
  readonly act: "increase" | "decrease" | "cast-on" | "bind-off";
  /** `centre` is the bottom of a neck, between the halves. */
  readonly at: Side | "each side" | "neck edge" | "centre";
  /** At least one, rows rising. */
  readonly steps: readonly ShapingStep[];
}

/**
 * The shaping of a piece, from its sheet's actions alone: block by block, within a block by the first row. Casting on
 * and binding off a whole block is no shaping.
 */
export function shapingRuns(piece: SheetPiece): readonly ShapingRun[] {
  return eventsByBlock(piece).flatMap((events) => {
    const runs = places.flatMap((at) => runsAt(events.filter((event) => event.at === at)));
    return saidOnce(runs).toSorted((one, other) => one.steps[0]!.row - other.steps[0]!.row);
  });
}

type Event = Omit<ShapingRun, "steps"> & ShapingStep;

const places = ["left", "right", "centre", "neck edge"] as const;

function eventsByBlock({ rows }: SheetPiece): readonly (readonly Event[])[] {
  const blocks: Record<Block, Event[]> = { whole: [], "first half": [], "second half": [] };
  let block: Block = "whole";
  for (const { row, do: actions } of rows)
    for (const action of actions) {
      if (action.act === "hold") block = "first half";
      else if (action.act === "work") block = "second half";
      const shaped = shapingIn(action);
      if (shaped) blocks[block].push({ block, row, ...shaped });
    }
  return Object.values(blocks);
}

function shapingIn(action: Action): Pick<Event, "act" | "at" | "needles"> | undefined {
  if ("side" in action) {
    const at = action.edge === "neck" ? "neck edge" : action.side;
    return { act: action.act, at, needles: action.needles };
  }
  if (!("yarn" in action)) return undefined;
  return { act: action.act, at: "centre", needles: needleCount([action.from, action.to]) };
}

function runsAt(events: readonly Event[]): readonly ShapingRun[] {
  const runs: (Omit<ShapingRun, "steps"> & { steps: ShapingStep[] })[] = [];
  for (const { row, needles, ...kind } of events) {
    const last = runs.at(-1);
    if (last?.act === kind.act) last.steps.push({ row, needles });
    else runs.push({ ...kind, steps: [{ row, needles }] });
  }
  return runs;
}

/** Runs that are alike at the left and at the right become one at each side. */
function saidOnce(runs: readonly ShapingRun[]): readonly ShapingRun[] {
  const twinOf = (run: ShapingRun, at: Side): ShapingRun | undefined =>
    runs.find((other) => other.at === at && other.act === run.act && sameSteps(other, run));
  return runs.flatMap((run): ShapingRun[] => {
    if (run.at === "left" && twinOf(run, "right")) return [{ ...run, at: "each side" }];
    return run.at === "right" && twinOf(run, "left") ? [] : [run];
  });
}

const sameSteps = (one: ShapingRun, other: ShapingRun): boolean =>
  one.steps.length === other.steps.length &&
  one.steps.every(
    ({ row, needles }, index) => row === other.steps[index]!.row && needles === other.steps[index]!.needles,
  );
