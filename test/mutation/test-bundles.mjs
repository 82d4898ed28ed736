import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { relative, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { constants, Script } from "node:vm";
import { build } from "esbuild";

/** A file's own address stays its own when it ends up in a bundle: tests find samples and fixtures by it. */
const ownAddresses = {
  name: "own-addresses",
  setup(builder) {
    builder.onLoad({ filter: /\.tsx?$/ }, async ({ path }) => {
      const text = await readFile(path, "utf8");
      const address = JSON.stringify(pathToFileURL(path).href);
      return {
        contents: text.replaceAll("import.meta.url", address),
        loader: path.endsWith("x") ? "tsx" : "ts",
      };
    });
  },
};

/** Files that are not wanted may use what the others may not: nothing of them is read. */
const withoutText = (paths) => ({
  name: "without-text",
  setup(builder) {
    const places = new Set(paths.map((path) => resolve(path)));
    builder.onLoad({ filter: /\.test\.tsx?$/ }, ({ path }) =>
      places.has(path) ? { contents: "" } : undefined,
    );
  },
});

/** Packages that are modules and nothing else become part of a bundle: asked for from it, their default is not found. */
const modulesOnly = {
  name: "modules-only",
  setup(builder) {
    builder.onResolve(
      { filter: /^(string-width|strip-ansi|ansi-regex|get-east-asian-width)$/ },
      ({ path }) => ({
        path: fileURLToPath(import.meta.resolve(path)),
      }),
    );
  },
};

/**
 * Bundles each test file with what it tests, compiled once and ready to be loaded any number of times: every load is a
 * set of modules of its own, so that what a module works out as it is read is worked out anew.
 *
 * @param patterns test files as esbuild's globs, from the working folder
 * @param leftOut paths that match but are not wanted
 * @returns by the file's path, what loads it
 */
export async function testBundles(patterns, leftOut) {
  const { outputFiles } = await build({
    entryPoints: patterns,
    // Where this process has moved to since esbuild was loaded: a copy of the project with its changes in place.
    absWorkingDir: process.cwd(),
    outbase: ".",
    outdir: "bundles",
    outExtension: { ".js": ".cjs" },
    bundle: true,
    write: false,
    platform: "node",
    format: "cjs",
    target: "node20",
    packages: "external",
    alias: { vitest: "./test/mutation/vitest-on-mocha.mjs" },
    plugins: [withoutText(leftOut), ownAddresses, modulesOnly],
    logLevel: "error",
  });
  const require = createRequire(resolve("package.json"));
  const loaders = new Map();
  for (const { path, text } of outputFiles) {
    const file = relative(resolve("bundles"), path).replace(/\.cjs$/, ".ts");
    if (leftOut.includes(file)) continue;
    const script = new Script(`(function (exports, require, module) {${text}\n})`, {
      filename: path,
      importModuleDynamically: constants.USE_MAIN_CONTEXT_DEFAULT_LOADER,
    });
    loaders.set(file, () => {
      const module = { exports: {} };
      script.runInThisContext()(module.exports, require, module);
    });
  }
  return loaders;
}
