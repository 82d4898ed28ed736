import type { StepOutcome } from "../explore/steps.ts";
import { writtenAt } from "../explore/written-value.ts";
import type { PlacedRule } from "../report/fit-json.ts";
import type { Binding } from "./binding.ts";
import type { LeastChange } from "./least-changes.ts";

/** What stands in the way, or what binds; `complete` is false where the time ended before all was tried. */
export type Why =
  | {
      readonly status: "does not fit";
      readonly conflict: readonly PlacedRule[];
      readonly changes: readonly LeastChange[];
      readonly complete: boolean;
    }
  | { readonly status: "fits"; readonly binding: readonly Binding[]; readonly complete: boolean };

/** The machine-readable answer of `why`, format `evenrow-why/1`; `from` is null where the file states nothing. */
export function whyToJson(why: Why, source: string): object {
  const head = { format: "evenrow-why/1", status: why.status, complete: why.complete };
  if (why.status === "fits")
    return {
      ...head,
      conflict: [],
      changes: [],
      binding: why.binding.map(({ giving, holding }) => ({
        rule: giving.rule,
        giving: stepOf(giving),
        ...(holding && { holding: stepOf(holding) }),
      })),
    };
  return {
    ...head,
    conflict: why.conflict.map(({ rule, words, place }) => ({
      rule,
      ...(place && { line: place.line }),
      words,
    })),
    changes: why.changes.map(({ edits, words, cost }) => ({
      set: edits.flatMap((edit) =>
        "remove" in edit
          ? []
          : [{ path: edit.path, from: plain(writtenAt(source, edit.path)), to: edit.value }],
      ),
      cost,
      words,
    })),
  };
}

const stepOf = ({ end, by, allows, fits, costChange }: StepOutcome): object => ({
  end,
  by,
  allows,
  fits,
  ...(costChange !== undefined && { cost_change: Number(costChange.toFixed(6)) }),
});

function plain(value: unknown): unknown {
  if (value === undefined) return null;
  if (value instanceof Map)
    return Object.fromEntries([...value].map(([key, item]) => [String(key), plain(item)]));
  return Array.isArray(value) ? value.map(plain) : value;
}
