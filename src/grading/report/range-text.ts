import { costTolerance } from "../../fit/check/breach.ts";
import { listed } from "../../report/words.ts";
import { wrap } from "../../report/wrap.ts";
import { type Dropped, type FittedSize, givenUp, type RangeFits } from "../range-result.ts";
import { type SharedLook, sharedLook } from "../shared-look.ts";
import { tableOf } from "../table/table.ts";
import { gaugeLines } from "./gauge-lines.ts";
import { lookDifferences, sharedLookLines } from "./look-text.ts";
import { tableText } from "./table-text.ts";

/** All sizes as a pattern prints them, what each gives up, and what else they could share, in lines of `width`. */
export function rangeText(result: RangeFits, width: number): string {
  const { range, sizes, dropping } = result;
  const { title, share } = range;
  const { fit } = sizes[0]!;
  const looks = looksShared(result);
  const [first, ...others] = sizes.map(({ name }) => name);
  return [
    title,
    "=".repeat(title.length),
    "",
    ...wrap(`Sizes: ${first}${others.length > 0 ? ` (${others.join(", ")})` : ""}`, width, 4),
    ...(looks.length > 0 ? ["", "In every size", ""] : []),
    ...looks.flatMap((look) => sharedLookLines(fit, look).flatMap((line) => wrap(line, width, 4))),
    ...tableText(tableOf(sizes, share), fit, width),
    "",
    ...gaugeLines(sizes, width),
    "",
    ...costLines(result, width),
    ...(share ? forcedLines(sizes, width) : []),
    ...(share ? droppingLines(dropping, looks, width) : []),
    ...(share ? ["", ...rivalLines(result, width)] : []),
  ].join("\n");
}

const looksShared = ({ range: { share }, sizes }: RangeFits) =>
  sizes[0]!.fit.looks.flatMap((look) => sharedLook(share, look) ?? []);

function costLines(
  { range: { share }, sizes, cost, proven, bound }: RangeFits,
  width: number,
): readonly string[] {
  const certain = proven
    ? `proven: nothing costs less${share ? " with what all sizes share" : ""}`
    : Number.isFinite(bound)
      ? `not proven: the best may cost as little as ${costWords(bound)}`
      : "not proven";
  const names = Math.max("size".length, ...sizes.map(({ name }) => name.length));
  const row = (...[name, ...costs]: readonly string[]): string =>
    `  ${name!.padEnd(names)}${costs.map((one, column) => one.padStart(column < 2 ? 14 : 18)).join("")}`;
  const known = share !== undefined && sizes.some(({ alone }) => alone);
  return [
    ...wrap(`What the sizes give up: ${costWords(cost)} in all (${certain})`, width, 4),
    known ? row("size", "gives up", "by itself", "lost to sharing") : row("size", "gives up"),
    ...sizes.map((size) => {
      const more = givenUp(size);
      return known
        ? row(
            size.name,
            costWords(size.fit.cost),
            size.alone ? costWords(size.alone.cost) : "not known",
            more === undefined ? "not known" : costWords(Math.max(0, more)),
          )
        : row(size.name, costWords(size.fit.cost));
    }),
  ];
}

/** How many sizes are named of those that give up most. */
const mostNamed = 3;

function forcedLines(sizes: readonly FittedSize[], width: number): readonly string[] {
  const known = sizes.flatMap((size) => {
    const more = givenUp(size);
    return more === undefined ? [] : [{ name: size.name, more }];
  });
  if (known.length === 0) return [];
  const forced = known.filter(({ more }) => more > costTolerance).sort((a, b) => b.more - a.more);
  if (forced.length === 0)
    return ["", ...wrap("No size gives up anything for the others: none would cost less by itself.", width)];
  const named = forced.slice(0, mostNamed).map(({ name, more }) => `${name} (${costWords(more)})`);
  const verb = named.length === 1 ? "gives" : "give";
  const others = forced.length > named.length ? `, ${forced.length - named.length} others less` : "";
  return ["", ...wrap(`For what all sizes share, ${listed(named)} ${verb} up most${others}.`, width)];
}

function droppingLines(
  dropping: readonly Dropped[],
  shared: readonly SharedLook[],
  width: number,
): readonly string[] {
  const gains = dropping.filter(({ gain }) => gain > 0).sort((a, b) => b.gain - a.gain);
  if (dropping.length === 0) return [];
  if (gains.length === 0) return wrap("To leave a size out of what is shared would gain nothing.", width);
  const named = gains.map(
    ({ size, gain, proven }) => `${size} ${costWords(gain)}${proven ? "" : " (not proven)"}`,
  );
  return wrap(
    `To leave one size out of what is shared would gain over all sizes: ${named.join(", ")}${gains.length < dropping.length ? "; any other, nothing" : ""}. ${othersThen(gains, shared)}`,
    width,
  );
}

/** Why a size may gain more for all than it gives up itself: the others may then share another look. */
function othersThen(gains: readonly Dropped[], shared: readonly SharedLook[]): string {
  const changes = gains.flatMap(({ size, looks = [] }) => {
    const found = lookDifferences(shared, looks);
    return found.length === 0 ? [] : [`without ${size} the others would have ${listed(found)}`];
  });
  const [first, ...more] = changes;
  if (first === undefined) return "The others would look as they do now: each gain is that size's own.";
  const rest =
    changes.length < gains.length
      ? ["otherwise they would look as now, and the gain is that size's own"]
      : [];
  return `${[first.replace("without", "Without"), ...more, ...rest].join("; ")}.`;
}

function rivalLines(result: RangeFits, width: number): readonly string[] {
  const { rivals, rivalsProven } = result;
  if (rivals.length === 0)
    return [rivalsProven ? "Nothing else fits every size." : "No other look was found in the time allowed."];
  const best = looksShared(result);
  return [
    `Next best for every size${rivalsProven ? "" : " (not proven)"}`,
    ...rivals.flatMap(({ cost, looks }) =>
      wrap(`  ${costWords(cost).padStart(8)}  ${lookDifferences(best, looks).join(", ")}`, width, 12),
    ),
  ];
}

const costWords = (value: number): string => value.toFixed(3);
