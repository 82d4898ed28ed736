import { needleFrom, needlesBetween } from "../../cloth/bed.ts";
import type { FittedPlacement } from "../../fit/fit.ts";
import { pointsOver } from "../../motif/sections.ts";
import type { CrossAction } from "../sheet.ts";
import type { Placed } from "./placed.ts";

/** Crossings of one column, and its ladders from the motif's first row to its last. */
export function cableActions(placement: FittedPlacement, centre: number, column: number): readonly Placed[] {
  const whose = { motif: placement.motif, placement: placement.index + 1, column };
  const runs = placement.sections.map(({ look: { trace }, repeats }) => ({ trace, repeats }));
  const { cables, ladders } = runs[0]!.trace;
  const more = placement.part?.columns[column - 1] ?? {};
  const crossings = cables.flatMap(({ name }) =>
    pointsOver(runs, "cables", name, more[name]).map(({ needle, row, over, section }): Placed => {
      const { left, right } = runs[section]!.trace.cables.find((cable) => cable.name === name)!;
      const middle = centre + needle;
      const [from, to] = needlesBetween(middle - left, middle + right);
      const cross: CrossAction = { act: "cross", from, to, left, right, over: over!, ...whose };
      return [placement.firstRow + row, cross];
    }),
  );
  const endRow = Math.max(placement.lastRow, ...crossings.map(([row]) => row));
  const at = (needle: number): number => needleFrom(centre, needle);
  return [
    // Before anything is crossed, so that the ladder's slack is there from the first crossing on.
    ...ladders.map(
      ({ needle, onto }): Placed => [
        placement.firstRow,
        { act: "out", needle: at(needle), onto: at(onto), ...whose },
      ],
    ),
    ...crossings,
    ...ladders.map(
      ({ needle, onto }): Placed => [endRow, { act: "in", needle: at(needle), from: at(onto), ...whose }],
    ),
  ];
}
