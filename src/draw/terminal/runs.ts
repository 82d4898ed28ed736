/** What a part of a drawing stands for. */
export type Role = "plain" | "outline" | "strand" | "mark" | "panel" | "unreachable" | "label";

export interface Cell {
  readonly character: string;
  readonly role: Role;
  /** For a strand its place in the motif's order of work, from 0; for a cable 0 is the nearer group, 1 the other. */
  readonly strand?: number;
}

/** Neighbouring characters with one role. */
export interface Run {
  readonly text: string;
  readonly role: Role;
  readonly strand?: number;
}

export function runsOf(cells: readonly Cell[]): readonly Run[] {
  const runs: { text: string; role: Role; strand?: number }[] = [];
  for (const { character, role, strand } of cells) {
    const last = runs.at(-1);
    if (last && last.role === role && last.strand === strand) last.text += character;
    else runs.push({ text: character, role, ...(strand !== undefined && { strand }) });
  }
  return runs;
}

export const textOf = (runs: readonly Run[]): string =>
  runs
    .map(({ text }) => text)
    .join("")
    .trimEnd();
