import { Worker } from "node:worker_threads";

/**
 * Starts a thread that writes nothing to the screen.
 *
 * @param heard told what it says
 * @param broken told why it ended, also where it was ended from here
 * @param ended why, where it ended without a fault
 */
export function startThread<Said>(
  url: URL,
  heard: (said: Said) => void,
  broken: (reason: string) => void,
  ended: string,
): Worker {
  const made = new Worker(url, { stdout: true, stderr: true });
  made.on("message", heard);
  made.on("error", (error: unknown) => broken(error instanceof Error ? error.message : String(error)));
  made.on("exit", () => broken(ended));
  return made;
}
