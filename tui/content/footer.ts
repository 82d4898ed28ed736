import { keyName } from "../keys/key-name.ts";
import { bindingsAt, placeOf } from "../keys.ts";
import type { State } from "../state.ts";
import { blank, type Line, type Span } from "./line.ts";

/** The keys that are valid now, as many as have room; the last ones (keys, quit) always have. */
export function footer(state: State, width: number, height: number): readonly Line[] {
  return footerOf(
    bindingsAt(placeOf(state)).filter(
      ({ short, unusable }) => short !== undefined && unusable?.(state) === undefined,
    ),
    width,
    height,
  );
}

/** What a footer shows of a key. */
interface FooterKey {
  readonly keys: readonly string[];
  readonly action: string;
  readonly short?: string;
}

/** Keys as a footer of at most so many lines. */
export function footerOf(bindings: readonly FooterKey[], width: number, height: number): readonly Line[] {
  const last = bindings.filter(({ action }) => action === "help" || action === "quit");
  const items = [...bindings.filter((one) => !last.includes(one)), ...last];
  for (let left = items.length; left > 0; left--) {
    const kept = [...items.slice(0, items.length - last.length).slice(0, left - last.length), ...last];
    const lines = laidOut(kept, width);
    if (lines.length <= height) return lines;
  }
  return [blank];
}

function laidOut(bindings: readonly FooterKey[], width: number): readonly Line[] {
  const lines: Span[][] = [[]];
  let used = 0;
  for (const { keys, short = "" } of bindings) {
    const key = keyName(keys[0]!);
    const wide = key.length + short.length + 3;
    if (used + wide > width && used > 0) {
      lines.push([]);
      used = 0;
    }
    lines.at(-1)!.push({ text: key, style: "strong" }, { text: ` ${short}  `, style: "dim" });
    used += wide;
  }
  return lines;
}
