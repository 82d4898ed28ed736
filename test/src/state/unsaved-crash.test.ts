import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtemp, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { expect, it } from "vitest";
import { unsavedFor } from "../../../src/state/unsaved.ts";

const unsavedSource = fileURLToPath(new URL("../../../src/state/unsaved.ts", import.meta.url));

/** Keeps one text after another as fast as it can, each told on standard output once it is kept. */
const busy = `
  import { rememberUnsaved } from ${JSON.stringify(unsavedSource)};
  const [folder, file] = process.argv.slice(2);
  for (let count = 0; count < 10_000; count++) {
    const kept = await rememberUnsaved(folder, file, "base", String(count).padStart(20_000, "."));
    if (kept.status === "failed") throw new Error(kept.reason);
    process.stdout.write(count + "\\n");
  }`;

it("outlives a program that is killed while it is writing", async () => {
  const top = await mkdtemp(join(tmpdir(), "evenrow-crash-"));
  const program = join(top, "busy.mjs");
  const file = join(top, "sleeve.yaml");
  await writeFile(file, "base");
  await build({
    stdin: { contents: busy, resolveDir: process.cwd(), loader: "ts" },
    bundle: true,
    platform: "node",
    format: "esm",
    outfile: program,
    banner: {
      js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url); const __filename = import.meta.url;',
    },
  });
  const child = spawn(process.execPath, [program, join(top, "state"), file], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  const exited = once(child, "exit");
  let told = -1;
  for await (const line of createInterface({ input: child.stdout })) {
    told = Number(line);
    if (told >= 25) child.kill("SIGKILL");
  }
  await exited;
  const unsaved = await unsavedFor(join(top, "state"), file);
  expect(unsaved?.currentText).toHaveLength(20_000);
  expect(Number(unsaved?.currentText.replace(/^\.+/, ""))).toBeGreaterThanOrEqual(told);
  expect(told).toBeGreaterThanOrEqual(25);
  const journals = await readdir(join(top, "state", "unsaved"));
  expect(journals.filter((name) => name.endsWith(".json"))).toHaveLength(1);
  await rm(top, { recursive: true });
});
