import { startEarly } from "../../solver/worker-start.ts";
import { builtWorkerUrl } from "../../solver/worker-url.ts";

/** The commands that ask the engine whatever they find in the file, unless something is wrong with it. */
const solving: readonly string[] = ["fit", "why", "tradeoff", "sheet", "chart", "refit"];

const [, , command = "", ...words] = process.argv;
const asksElse = words.some((word) => word === "--help" || word === "-h" || word.startsWith("--engine"));
if (solving.includes(command) && words.length > 0 && !asksElse)
  try {
    startEarly(builtWorkerUrl(), { engine: "simplex" });
  } catch {
    // Whoever asks the engine tells what is missing.
  }
