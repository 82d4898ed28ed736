import { wrap } from "../../report/wrap.ts";
import type { DoLine, WorkLine } from "../document/document.ts";
import { knitPhrase } from "../document/phrases.ts";

/** Lines of work as text of at most `width` characters. */
export function rowsText(lines: readonly WorkLine[], width: number): readonly string[] {
  const digits = Math.max(...lines.map((line) => String(line.kind === "do" ? line.row : line.toRow).length));
  return lines.flatMap((line) =>
    line.kind === "knit"
      ? wrap(`${" ".repeat(digits + 6)}${knitPhrase(line)}`, width, digits + 8)
      : withRunning(line).flatMap((phrase, index) => {
          const head = index === 0 ? `row ${String(line.row).padStart(digits)}  ` : " ".repeat(digits + 6);
          return wrap(`${head}${phrase}`, width, digits + 8);
        }),
  );
}

/** The running row stands behind what is done last. */
const withRunning = ({ phrases, running }: DoLine): readonly string[] =>
  running.length === 0 ? phrases : [...phrases.slice(0, -1), `${phrases.at(-1)}  [${running.join("; ")}]`];
