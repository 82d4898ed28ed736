import { existsSync } from "node:fs";

/**
 * Where the built worker lies: beside the bundle, above it when this code ended up among the bundle's parts, or in
 * the build's folder when the sources are run as they are.
 *
 * @throws Error where there is no built worker
 */
export function builtWorkerUrl(): URL {
  const places = ["./engine-worker.cjs", "../engine-worker.cjs", "../dist/engine-worker.cjs"];
  const found = places.map((place) => new URL(place, import.meta.url)).find((url) => existsSync(url));
  if (found === undefined) throw new Error("engine-worker.cjs is missing: run the build first");
  return found;
}
