import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Every file of the samples with such an ending, by its path from the project's folder. */
export function sampleFiles(ending: string): readonly string[] {
  return ["samples", "samples/motifs"].flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith(ending))
      .map((name) => join(folder, name)),
  );
}

export const sampleTexts = (ending: string): readonly string[] =>
  sampleFiles(ending).map((file) => readFileSync(file, "utf8"));
