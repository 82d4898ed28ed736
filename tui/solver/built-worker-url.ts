import { existsSync } from "node:fs";

/** A worker's file: beside the bundle, above its parts, or in the build's folder when the sources are run as they are. */
export function builtWorkerUrl(name: "solve-worker" | "trade-worker" | "midway-worker"): URL {
  const places = [`./${name}.js`, `../${name}.js`, `../../dist/${name}.js`];
  const found = places.map((place) => new URL(place, import.meta.url)).find((url) => existsSync(url));
  if (found === undefined) throw new Error(`${name}.js is missing: run the build first`);
  return found;
}
