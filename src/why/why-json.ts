import type { Path } from "../diagnostics/path.ts";
import { applyEdits } from "../explore/apply-edits.ts";
import type { StepOutcome } from "../explore/steps.ts";
import { writtenAt } from "../explore/written-value.ts";
import type { PlacedRule } from "../report/fit-json.ts";
import type { LeastChange } from "./least-changes.ts";
import type { WhyNot, WhySo } from "./why.ts";

/** What was found out, with the places of the rules in the file. */
export type PlacedWhy = WhySo | (Omit<WhyNot, "conflict"> & { readonly conflict: readonly PlacedRule[] });

/**
 * The machine-readable answer of `why`, format `evenrow-why/1`. Each `set` of a change says what to put at which path;
 * where something is taken out of a list, the whole list as it is then. `from` is null where the file states nothing.
 */
export const whyToJson = (why: PlacedWhy, source: string): object => ({
  format: "evenrow-why/1",
  status: why.status,
  complete: why.complete,
  ...findingsOf(why, source),
});

/** What was found out, without a word on how the asking came out. */
export function findingsOf(why: PlacedWhy, source: string): object {
  if (why.status === "fits")
    return {
      conflict: [],
      changes: [],
      binding: why.binding.map(({ giving, holding }) => ({
        rule: giving.rule,
        giving: stepOf(giving),
        ...(holding && { holding: stepOf(holding) }),
      })),
    };
  return {
    smallest: why.smallest,
    conflict: why.conflict.map(({ rule, words, place }) => ({
      rule,
      ...(place && { line: place.line }),
      words,
    })),
    changes: changesToJson(why.changes, source),
    unhelpful: why.unhelpful,
  };
}

export const changesToJson = (
  changes: readonly Pick<LeastChange, "edits" | "cost" | "words">[],
  source: string,
): readonly object[] =>
  changes.map((change) => ({ set: setsOf(change, source), cost: change.cost, words: change.words }));

/** What the file says at each place that a change touches, before and after it. */
function setsOf({ edits }: Pick<LeastChange, "edits">, source: string): readonly object[] {
  const edited = applyEdits(source, edits);
  const after = "text" in edited ? edited.text : source;
  const paths = edits.map((edit): Path => {
    const isItem = "remove" in edit && typeof edit.path.at(-1) === "number";
    return isItem ? edit.path.slice(0, -1) : edit.path;
  });
  const distinct = new Map(paths.map((path) => [JSON.stringify(path), path]));
  return [...distinct.values()].map((path) => ({
    path,
    from: plain(writtenAt(source, path)) ?? null,
    // A key that is taken out is as good as an empty list.
    to: plain(writtenAt(after, path)) ?? [],
  }));
}

const stepOf = ({ end, by, allows, fits, costChange }: StepOutcome): object => ({
  end,
  by,
  allows,
  fits,
  ...(costChange !== undefined && { cost_change: Number(costChange.toFixed(6)) }),
});

function plain(value: unknown): unknown {
  if (value instanceof Map)
    return Object.fromEntries([...value].map(([key, item]) => [String(key), plain(item)]));
  return Array.isArray(value) ? value.map(plain) : value;
}
