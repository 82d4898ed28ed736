import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/**
 * The folder of the samples that come with the program, undefined where they are missing. The bundle lies one folder
 * below it, the bundle's parts and this source two.
 */
export const samplesFolder = (): string | undefined =>
  ["../samples/", "../../samples/"]
    .map((place) => fileURLToPath(new URL(place, import.meta.url)))
    .find((path) => existsSync(join(path, "sleeve.yaml")));
