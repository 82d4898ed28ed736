import type { WorkLine } from "./document/document.ts";

/** Lines that stay on one sheet: plain rows with what is done after them. */
export function stepsOf(lines: readonly WorkLine[]): readonly (readonly WorkLine[])[] {
  const steps: WorkLine[][] = [];
  for (const line of lines) {
    const last = steps.at(-1);
    if (last?.at(-1)?.kind === "knit") last.push(line);
    else steps.push([line]);
  }
  return steps;
}
