import type { WorkLine } from "./document/document.ts";

/** Lines that stay on one sheet: plain rows with what is done after them. */
export function stepsOf(lines: readonly WorkLine[]): readonly (readonly WorkLine[])[] {
  const steps: WorkLine[][] = [];
  lines.forEach((line, index) => {
    if (lines[index - 1]?.kind === "knit") steps.at(-1)!.push(line);
    else steps.push([line]);
  });
  return steps;
}
