import { rulesFor } from "../explore/rules-for.ts";
import type { NamedRule } from "../fit/refusal/rule.ts";
import type { Garment } from "../garment/garment.ts";
import type { LeastChange } from "./least-changes.ts";
import type { Way } from "./way.ts";
import { waysOf } from "./ways.ts";

/** A rule that stands in the way and none of whose changes was found to help, with how far they were followed. */
export interface Unhelpful {
  readonly rule: string;
  readonly words: string;
}

/** The rules in the way that no change is proposed of, though there are changes of others; none where nothing helps. */
export function unhelpfulAmong(
  { source, garment }: { readonly source: string; readonly garment: Garment },
  conflict: readonly NamedRule[],
  changes: readonly LeastChange[],
): readonly Unhelpful[] {
  if (changes.length === 0) return [];
  const helps = ({ rule }: NamedRule): boolean =>
    changes.some(({ given }) => given.some((one) => one.rule === rule));
  const alone = changes.every(({ given }) => given.length === 1) ? "alone " : "";
  const movable = rulesFor(garment);
  return conflict
    .filter((rule) => !helps(rule))
    .map((named) => {
      const ways = waysOf(source, garment, named, movable);
      const said =
        ways.length === 0
          ? "no change of it is proposed"
          : ways.every(isAtItsEnd)
            ? "it cannot give way any further"
            : `no change of it ${alone}helps (followed ${followed(ways)})`;
      return { rule: named.rule, words: `${named.words}; ${said}` };
    });
}

const isAtItsEnd = ({ mostSteps, otherwise }: Way): boolean => mostSteps < 1 && !otherwise;

const followed = (ways: readonly Way[]): string =>
  ways
    .flatMap((way) => [way, ...(way.otherwise ? [way.otherwise] : [])])
    .map((way) => way.followed)
    .join(" and ");
