import { needleName } from "../cloth/bed.ts";
import type { Action } from "../sheet/sheet.ts";

/**
 * The actions of one row in as few words as can be read from the machine, in working order and a line each: what to
 * count and where to hang it, without how. Like shaping at both sides is one line.
 *
 * @param columns how many columns a motif has; a column is named where there are several
 */
export function briefsOf(actions: readonly Action[], columns: (motif: string) => number): readonly string[] {
  const briefs: string[] = [];
  for (let index = 0; index < actions.length; index++) {
    const [action, next] = [actions[index]!, actions[index + 1]];
    const both = next && bothSides(action, next);
    briefs.push(both ?? briefOf(action, columns));
    if (both !== undefined) index++;
  }
  return briefs;
}

/** Shaping that is the same at either side. */
function bothSides(one: Action, other: Action): string | undefined {
  return (one.act === "increase" || one.act === "decrease") &&
    other.act === one.act &&
    other.side !== one.side &&
    other.edge === one.edge
    ? `${one.act} both`
    : undefined;
}

function briefOf(action: Action, columns: (motif: string) => number): string {
  switch (action.act) {
    case "cast-on":
      return "side" in action
        ? `cast on ${action.needles} ${edgeOf(action)}`
        : `cast on ${between(action.from, action.to)}`;
    case "increase":
    case "decrease":
      return `${action.act} ${edgeOf(action)}`;
    case "bind-off":
      if ("side" in action) return `bind off ${action.needles} ${edgeOf(action)}`;
      return "yarn" in action ? `bind off ${between(action.from, action.to)}` : "bind off all";
    case "hold":
      return `hold ${between(action.from, action.to)}`;
    case "work":
      return `work ${between(action.from, action.to)}`;
    case "hang":
      return `${armOf(action, columns)} ${countOf(action)}on ${needleName(action.needle)}`;
    case "finish":
      return `${armOf(action, columns)} end on ${needleName(action.needle)}`;
    case "cross":
      // The group that is put back first lies in front, so a mirrored pair reads differently.
      return `cross ${action.left}/${action.right} ${between(action.from, action.to)} ${action.over} first`;
    case "out":
      return `out ${needleName(action.needle)} to ${needleName(action.onto)}`;
    case "in":
      return `in ${needleName(action.needle)}`;
    case "pattern":
      return `pattern ${between(action.from, action.to)}`;
    case "plain":
      return `plain ${between(action.from, action.to)}`;
  }
}

const between = (from: number, to: number): string => `${needleName(from)}-${needleName(to)}`;

const edgeOf = ({ side, edge }: { readonly side: string; readonly edge?: "neck" }): string =>
  edge === "neck" ? `neck ${side}` : side;

/** At its first hanging nothing is counted. */
const countOf = ({ count, loop }: { readonly count: number; readonly loop?: true }): string =>
  count === 0 ? "" : loop ? `${count} loop ` : `${count} `;

const armOf = (
  { strand, motif, column }: { readonly strand: string; readonly motif: string; readonly column: number },
  columns: (motif: string) => number,
): string => (columns(motif) > 1 ? `${column} ${strand}` : strand);
