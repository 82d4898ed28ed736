// Bundles the program. One file starts several times faster than the packages it is made of; what only some
// commands need (the terminal UI, the second engine) is split off and loaded when it is asked for.
import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join, sep } from "node:path";
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

const common = {
  bundle: true,
  platform: "node",
  target: "node20",
  format: "esm",
  minifySyntax: true,
  minifyWhitespace: true,
  logLevel: "warning",
  define: { "process.env.NODE_ENV": '"production"', EVENROW_VERSION: JSON.stringify(version) },
  plugins: [withoutDeveloperTools],
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
function writeLicences({ inputs }) {
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
      evenrow: "src/cli/main.ts",
      "engine-worker": "solver/engine-worker.ts",
      "solve-worker": "tui/solver/solve-worker.ts",
      "trade-worker": "tui/solver/trade-worker.ts",
      "midway-worker": "tui/work/midway-worker.ts",
    },
    external: ["highs", "@resvg/resvg-js", "pdfkit"],
    outdir: into,
    chunkNames: "parts/[name]-[hash]",
  });
  await writeManual();
  writeLicences(metafile);
}
