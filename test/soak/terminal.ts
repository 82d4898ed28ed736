import { copyFileSync, rmSync } from "node:fs";
import { join, resolve } from "node:path";
import fc from "fast-check";
import { openSession } from "../support/terminal-session.ts";
import { folderForCommands } from "./command-lines.ts";
import { must, type Outcome, type Target, targetOf } from "./target.ts";

interface Typing {
  readonly command: "explore" | "work";
  readonly bursts: readonly string[];
  readonly columns: number;
  readonly rows: number;
}

/** Ctrl-C, Ctrl-Z and Ctrl-\\, which mean that the program is to end or to rest. */
const leaving = ["\u0003", "\u001a", "\u001c"];

/** What a terminal can send: letters, keys as it spells them, halves of those, pastes, and reports that nobody asked for. */
const sent = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(..."jkhl+-uwnbmgpo?/ 0123456789\r\t\u001b\u007f") },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      "\u001b[A",
      "\u001b[B",
      "\u001b[C",
      "\u001b[D",
      "\u001b[5~",
      "\u001b[6~",
      "\u001bOP",
    ),
  },
  fc.constantFrom(
    "\u001b[",
    "\u001b[1;",
    "\u001bO",
    "\u001b[200~paste\u001b[201~",
    "\u001b[24;80R",
    "\u001b[?1;2c",
    "\u001b]0;x\u0007",
  ),
  fc
    .string({ unit: "binary", maxLength: 8 })
    .map((text) => [...text].filter((one) => !leaving.includes(one)).join("")),
);

/** The screens in a terminal: whatever is typed, they still leave when asked to, and leave the terminal as it was. */
export const terminalKeys: Target = targetOf<Typing>({
  name: "screens in a terminal",
  usual: 40,
  longestMs: 120_000,
  inputs: () =>
    fc.record({
      command: fc.constantFrom<Typing["command"][]>("explore", "work"),
      bursts: fc.array(
        fc.array(sent, { maxLength: 8 }).map((parts) => parts.join("")),
        { minLength: 1, maxLength: 12 },
      ),
      columns: fc.constantFrom(80, 80, 40, 20, 200),
      rows: fc.constantFrom(24, 24, 10, 5, 60),
    }),
  attempt: async () => {
    const folder = folderForCommands();
    process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
    const sample = resolve("samples/sleeve.yaml");
    return async ({ command, bursts, columns, rows }): Promise<Outcome> => {
      const file = join(folder, "sleeve.yaml");
      copyFileSync(sample, file);
      rmSync(join(folder, "state"), { recursive: true, force: true });
      const session = openSession([process.execPath, "dist/evenrow.js", command, file], {
        columns,
        rows,
        environment: { XDG_STATE_HOME: join(folder, "state") },
      });
      let ended: number | undefined;
      void session.exited.then((code) => {
        ended = code;
      });
      try {
        await session.until(() => session.isAlternate() || ended !== undefined, "the screen");
        for (const burst of bursts) {
          session.send(burst);
          await new Promise((wait) => setTimeout(wait, 40));
        }
        // Ctrl-C leaves from everywhere; it is sent until it is heard.
        await session.until(() => {
          if (ended === undefined) session.send("\u0003");
          return ended !== undefined;
        }, "the end");
      } finally {
        if (ended === undefined) session.kill("SIGKILL");
      }
      must(!/\n\s+at .*:\d+:\d+/.test(session.output()), `a stack trace: ${session.output().slice(-1000)}`);
      must(!session.output().includes("fault of its own"), `a fault: ${session.output().slice(-1000)}`);
      // What was written last may come after the end.
      await session.until(
        () => !session.isAlternate() && !session.cursorIsHidden(),
        "the terminal as it was before the screen",
      );
      return "accepted";
    };
  },
});
