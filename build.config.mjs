// Bundles the program. One file starts several times faster than the packages it is made of; what only some
// commands need (the terminal UI, the second engine) is split off and loaded when it is asked for.
import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join, relative, resolve, sep } from "node:path";
import { build } from "esbuild";

const { version } = JSON.parse(readFileSync(new URL("package.json", import.meta.url), "utf8"));
/** What is only run by contributors, from a bundle of its own. */
const aside = ["bench", "soak"].find((name) => process.argv.includes(`--${name}`));
const into = process.argv.find((word) => word.startsWith("--into="))?.slice("--into=".length) ?? "dist";

/** ink asks for these only in development. */
const withoutDeveloperTools = {
  name: "without-developer-tools",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^(react-devtools-core|ws)$/ }, ({ path }) => ({ path, namespace: "empty" }));
    onLoad({ filter: /.*/, namespace: "empty" }, () => ({ contents: "export default {};" }));
  },
};

/**
 * string-width makes Intl.Segmenter as it is loaded, which takes 10 to 20 ms. Most text is ASCII, which is as wide as it is
 * long; the package is loaded with the first text that is not.
 */
const lateWidth = {
  name: "late-width",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^string-width$/ }, ({ path, importer, resolveDir }) =>
      importer.includes("node_modules") || importer === path
        ? undefined
        : { path, namespace: "late-width", pluginData: { resolveDir } },
    );
    onLoad({ filter: /.*/, namespace: "late-width" }, ({ pluginData: { resolveDir } }) => ({
      contents: `let measure;
        export default function stringWidth(text, options) {
          if (typeof text === "string" && /^[\\x20-\\x7e]*$/.test(text)) return text.length;
          measure ??= require("string-width").default;
          return measure(text, options);
        }`,
      resolveDir,
    }));
  },
};

const common = {
  bundle: true,
  platform: "node",
  target: "node20",
  format: "esm",
  minifySyntax: true,
  minifyWhitespace: true,
  logLevel: "warning",
  define: { "process.env.NODE_ENV": '"production"', EVENROW_VERSION: JSON.stringify(version) },
  plugins: [withoutDeveloperTools, lateWidth],
  // Bundled CommonJS packages call require() for node's own modules, and ask for the name of their file.
  banner: {
    js: 'import { createRequire as __createRequire } from "node:module"; const require = __createRequire(import.meta.url); const __filename = import.meta.filename ?? import.meta.url;',
  },
};

/** The commands themselves are left out: only what is said of them is needed. */
const withoutCommands = {
  name: "without-commands",
  setup({ onResolve }) {
    onResolve({ filter: /^\.\/commands\// }, ({ path }) => ({ path, external: true }));
  },
};

/** Writes the manual pages, which are made from the tables of commands and of the garment file's keys. */
async function writeManual() {
  const { outputFiles } = await build({
    stdin: {
      contents: `export { commandTable } from "./src/cli/command-table.ts";
        export { commandsPage } from "./src/cli/manual/commands-page.ts";
        export { garmentPage } from "./src/cli/manual/garment-page.ts";`,
      resolveDir: process.cwd(),
    },
    bundle: true,
    format: "esm",
    write: false,
    plugins: [withoutCommands],
  });
  const { commandTable, commandsPage, garmentPage } = await import(
    `data:text/javascript,${encodeURIComponent(outputFiles[0].text)}`
  );
  writeFileSync(join(into, "evenrow.1"), commandsPage(commandTable, version));
  writeFileSync(
    join(into, "evenrow-garment.5"),
    garmentPage(readFileSync("samples/sleeve.yaml", "utf8"), version),
  );
}

/** Writes the licences of all that is bundled: whoever passes their code on has to pass on their terms. */
function writeLicences(inputs) {
  const folders = new Set();
  for (const file of Object.keys(inputs)) {
    const [, folder] = /^((?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(file.split(sep).join("/")) ?? [];
    if (folder !== undefined) folders.add(folder);
  }
  const entries = [...folders].sort().map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
    const file = readdirSync(folder).find((name) => /^licen[cs]e/i.test(name));
    const text = file === undefined ? "" : `\n${readFileSync(join(folder, file), "utf8").trim()}\n`;
    return `${name} ${version} (${license})\n${text}`;
  });
  writeFileSync(
    join(into, "LICENSES.txt"),
    `Evenrow is bundled with these packages, under their own terms.\n\n${entries.join(`\n${"-".repeat(72)}\n\n`)}`,
  );
}

const optional = ["highs", "@resvg/resvg-js", "pdfkit"];

/**
 * Makes the commands that a script holds part of it at once; what else is loaded later is a part of the other bundle. To
 * bundle both into one script would keep esbuild from leaving out what nobody uses.
 */
const inOneScript = (parts, commands) => ({
  name: "in-one-script",
  setup({ onLoad, onResolve }) {
    onLoad({ filter: /[\\/]command-table\.ts$/ }, ({ path }) => {
      const modules = [];
      const text = readFileSync(path, "utf8").replace(
        /import\("\.\/commands\/(\w+)\.ts"\)/g,
        (whole, name) => {
          if (!commands.includes(name)) return whole;
          modules.push(`import * as ${name}Command from "./commands/${name}.ts";`);
          return `Promise.resolve(${name}Command)`;
        },
      );
      return { contents: [...modules, text].join("\n"), loader: "ts" };
    });
    onResolve({ filter: /^\.{1,2}\// }, ({ path, kind, resolveDir }) => {
      if (kind !== "dynamic-import") return undefined;
      return {
        path: parts.get(relative(process.cwd(), join(resolveDir, path)).split(sep).join("/")),
        external: true,
      };
    });
  },
});

/** What the entry loads is bundled already. */
const mainPart = {
  name: "main-part",
  setup({ onResolve }) {
    onResolve({ filter: /^\.\/main\.ts$/ }, () => ({ path: "./parts/main.js", external: true }));
  },
};

async function quickCommands() {
  const { outputFiles } = await build({
    entryPoints: ["src/cli/quick-commands.ts"],
    format: "esm",
    write: false,
  });
  return (await import(`data:text/javascript,${encodeURIComponent(outputFiles[0].text)}`)).quickCommands;
}

/** Where each module begins that is loaded later, by its source; seen from the folder of all parts. */
const partsOf = ({ outputs }) =>
  new Map(
    Object.entries(outputs)
      .filter(([, { entryPoint }]) => entryPoint !== undefined)
      .map(([file, { entryPoint }]) => [entryPoint, beside(file, join(into, "parts"))]),
  );

const beside = (file, folder) => {
  const path = relative(folder, file).split(sep).join("/");
  return path.startsWith(".") ? path : `./${path}`;
};

/**
 * Bundles one entry into a script that `solver/run-bundle.ts` runs: a single file is read quicker than many parts, and
 * the compiled code of a script can be kept.
 *
 * @returns its name, as it is seen from the folder of the program
 */
async function buildScript(name, entry, options) {
  const { metafile, outputFiles } = await build({
    ...common,
    format: "cjs",
    metafile: true,
    entryPoints: { [name]: entry },
    entryNames: "parts/[name]-[hash]",
    outExtension: { ".js": ".cjs" },
    outdir: into,
    external: optional,
    define: { ...common.define, "import.meta.url": "__url" },
    banner: { js: "(function (require, __filename, __import, __url) {" },
    footer: { js: "})" },
    write: false,
    ...options,
  });
  const [file] = Object.keys(metafile.outputs);
  writeFileSync(file, outputFiles[0].text.replace(/\bimport\(("\.\.?\/[^"]+\.js")\)/g, "__import($1)"));
  return { name: beside(file, into), inputs: metafile.inputs };
}

/** Runs the program once, so that the code that a run compiles can be kept. */
function keepCode() {
  const { NODE_OPTIONS = "" } = process.env;
  execFileSync(process.execPath, [join(into, "evenrow.js"), "fit", "samples/sleeve.yaml"], {
    stdio: ["ignore", "ignore", "pipe"],
    env: {
      ...process.env,
      NODE_OPTIONS: `${NODE_OPTIONS} --require ${JSON.stringify(resolve("keep-code.cjs"))}`,
    },
  });
}

if (aside !== undefined) {
  await build({
    ...common,
    packages: "external",
    // What is imported later has to be loaded later: React looks at the environment when it is loaded.
    splitting: true,
    entryPoints: { [aside]: `test/${aside}/main.ts` },
    outdir: "dist",
    chunkNames: "parts/[name]-[hash]",
  });
} else {
  // Only a release starts from nothing: tests that run the built program may be running beside this build.
  if (process.argv.includes("--anew")) rmSync(into, { recursive: true, force: true });
  const { metafile } = await build({
    ...common,
    splitting: true,
    metafile: true,
    entryPoints: {
      "parts/main": "src/cli/main.ts",
      "solve-worker": "tui/solver/solve-worker.ts",
      "trade-worker": "tui/solver/trade-worker.ts",
      "midway-worker": "tui/work/midway-worker.ts",
    },
    external: optional,
    outdir: into,
    chunkNames: "parts/[name]-[hash]",
  });
  const parts = partsOf(metafile);
  const commands = await buildScript("commands", "src/cli/main.ts", {
    plugins: [...common.plugins, inOneScript(parts, await quickCommands())],
  });
  // The engine's script imports nothing but what may be missing.
  const engine = await buildScript("engine", "solver/engine-worker.ts", {
    supported: { "dynamic-import": false },
  });
  await build({
    ...common,
    entryPoints: { evenrow: "src/cli/entry.ts" },
    outdir: into,
    plugins: [mainPart],
    define: { COMMANDS_SCRIPT: JSON.stringify(commands.name) },
    banner: {},
  });
  await build({
    ...common,
    format: "cjs",
    entryPoints: { "engine-worker": "solver/engine-entry.ts" },
    outExtension: { ".js": ".cjs" },
    outdir: into,
    define: { ENGINE_SCRIPT: JSON.stringify(engine.name), "import.meta.url": "__url" },
    banner: { js: 'const __url = require("node:url").pathToFileURL(__filename).href;' },
  });
  keepCode();
  await writeManual();
  writeLicences({ ...metafile.inputs, ...commands.inputs, ...engine.inputs });
}
