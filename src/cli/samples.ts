import { existsSync } from "node:fs";
import { join, normalize, sep } from "node:path";
import { fileURLToPath } from "node:url";

/**
 * The folder of the samples that come with the program, undefined where they are missing. The bundle lies one folder
 * below it, the bundle's parts and this source two.
 */
export const samplesFolder = (): string | undefined =>
  ["../samples/", "../../samples/"]
    .map((place) => fileURLToPath(new URL(place, import.meta.url)))
    .find((path) => existsSync(join(path, "sleeve.yaml")));

/**
 * A line that says where a sample lies that was asked for as the documents name it ("samples/hat.yaml"), for whoever
 * runs the program out of another folder than its own; nothing where there is no such sample.
 */
export function whereSampleIs(file: string): string {
  const [first, ...rest] = normalize(file).split(sep);
  const folder = samplesFolder();
  if (first !== "samples" || folder === undefined) return "";
  const sample = join(folder, ...rest);
  return existsSync(sample) ? `\nThe sample that comes with the program: ${sample}` : "";
}
