import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { Script } from "node:vm";

/** A bundled script: what a module of CommonJS is handed, how it imports a module that lies beside it, and where it lies. */
type Run = (
  require: NodeJS.Require,
  __filename: string,
  __import: (path: string) => Promise<unknown>,
  __url: string,
) => void;

/**
 * Runs a script that the build has made together with its compiled code, which lies beside it under the same name with
 * `.code` added. Compiling is a good part of what a short command takes. Code that another version of node has compiled is
 * refused by V8, and a script without code is compiled as usual.
 */
export function runBundle(url: URL): void {
  const filename = fileURLToPath(url);
  // Scripts are written in ASCII, and one byte a character is the quickest to read.
  const source = readFileSync(filename, "latin1");
  const cachedData = codeBeside(filename);
  const run: Run = new Script(source, { filename, ...(cachedData && { cachedData }) }).runInThisContext();
  // A script that comes out of kept code does not know by itself what its imports refer to.
  run(createRequire(url), filename, (path) => import(new URL(path, url).href), url.href);
}

function codeBeside(filename: string): Buffer | undefined {
  try {
    return readFileSync(`${filename}.code`);
  } catch {
    return undefined;
  }
}
