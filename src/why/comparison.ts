import type { Expression } from "../motif/expression.ts";
import type { Rule } from "../motif/motif.ts";

/**
 * A comparison that asks less by so much on its right side: "spread <= interval + 2" by 2 is "spread <= interval + 4",
 * "2 * spread >= interval" by 1 is "2 * spread >= interval - 1". Undefined where both sides have to be equal.
 */
export function easedBy(rule: Rule, by: number): Rule | undefined {
  const { comparison, right, source } = rule;
  if (comparison === "=") return undefined;
  const more = comparison.startsWith("<") ? by : -by;
  const at = source.indexOf(comparison) + comparison.length;
  return {
    ...rule,
    right: plus(right, more),
    source: `${source.slice(0, at)} ${plusInText(source.slice(at).trim(), more)}`,
  };
}

const plus = (expression: Expression, more: number): Expression => ({
  ...expression,
  tree: {
    kind: "binary",
    operator: "+",
    left: expression.tree,
    right: { kind: "number", value: more },
  },
});

/** A sum with so much more at its end; a whole number that stands there already takes it in. */
function plusInText(sum: string, more: number): string {
  if (/^-?\d+$/.test(sum)) return String(Number(sum) + more);
  const [, rest, sign, digits] = /^(.*[\w)])\s*([+-])\s*(\d+)$/.exec(sum) ?? [];
  if (rest === undefined) return `${sum}${added(more)}`;
  return `${rest}${added(Number(`${sign}${digits}`) + more)}`;
}

const added = (amount: number): string => (amount === 0 ? "" : amount < 0 ? ` - ${-amount}` : ` + ${amount}`);
