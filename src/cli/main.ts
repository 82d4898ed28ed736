// First of all, so that the thread starts while everything else is loaded.
import "./early-engine.ts";
import type { Terminal } from "./command.ts";
import { exitCodes } from "./exit-codes.ts";
import { MOST_INPUT_BYTES } from "./files.ts";
import { createStatusLine } from "./progress/status-line.ts";
import { runCommandLine } from "./run.ts";
import { saidText } from "./said-text.ts";

const usualColumns = 80;

const statusLine = createStatusLine(process.stderr, process.env);

const terminal: Terminal = {
  out: (text) => {
    statusLine?.show(undefined);
    process.stdout.write(`${text}\n`);
  },
  ...(process.stdout.isTTY !== true && { outBytes: (bytes: Uint8Array) => process.stdout.write(bytes) }),
  say: (text) => {
    statusLine?.show(undefined);
    process.stderr.write(`${saidText(text, process.stderr.isTTY ? process.stderr.columns : undefined)}\n`);
  },
  columns: process.stdout.columns ?? usualColumns,
  // Asked for only by some commands: standard input takes a while to be opened.
  get interactive() {
    return process.stdout.isTTY === true && process.stdin.isTTY === true;
  },
  readStdin: async () => {
    const chunks: Buffer[] = [];
    let size = 0;
    for await (const chunk of process.stdin as AsyncIterable<Buffer>) {
      chunks.push(chunk);
      size += chunk.length;
      // What goes on for ever is refused for its length by whoever asked.
      if (size > MOST_INPUT_BYTES) break;
    }
    return Buffer.concat(chunks);
  },
  ...(statusLine && { status: statusLine.show }),
  onInterrupt: (stop) => {
    let isFirst = true;
    const take = (): void => {
      if (!isFirst) {
        statusLine?.show(undefined);
        process.exit(exitCodes.interrupted);
      }
      isFirst = false;
      stop();
    };
    process.on("SIGINT", take);
    return () => process.off("SIGINT", take);
  },
};

// A reader that has seen enough (`| head`) closes the pipe; that is no fault.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});

// Until it is done: what ends without having been done has not been done.
process.exitCode = exitCodes.fault;
void runCommandLine(process.argv.slice(2), terminal).then((code) => {
  process.exitCode = code;
});
