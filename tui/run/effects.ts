import { loadDrawings } from "../../src/drawing-file/load-drawings.ts";
import { openForEditing } from "../../src/edit/open.ts";
import { saveFile } from "../../src/edit/save.ts";
import { rememberRecent } from "../../src/state/recent-files.ts";
import { unsavedFor } from "../../src/state/unsaved.ts";
import type { Effect, Message } from "../message.ts";
import { createSolver } from "../solver/solver.ts";
import { createTrader } from "../solver/trader.ts";
import { createKeeper } from "./keeper.ts";
import { shelfEntries } from "./shelf.ts";

/** What ends or interrupts the screen; the terminal's owner does it. */
export type Departure = Extract<Effect, { readonly kind: "quit" | "suspend" | "new" }>;

export interface Performer {
  readonly perform: (effect: Effect) => void;
  /** Resolves once everything is on disk that was to be kept. */
  readonly settled: () => Promise<void>;
  /** Ends the solving thread once everything is on disk that was to be kept. */
  readonly close: () => Promise<void>;
}

/** Does what the program asks for: files, the solving thread, and what outlives a crash. */
export function createPerformer(
  stateFolder: string,
  send: (message: Message) => void,
  depart: (departure: Departure) => void,
): Performer {
  const solver = createSolver(
    (report) => {
      if (report.kind !== "started") send(report);
    },
    (sequence, reason) => send({ kind: "answer", sequence, answer: { kind: "failed", reason } }),
  );
  const trader = createTrader(send);
  const keeper = createKeeper(stateFolder);

  async function open(file: string, size: string | undefined): Promise<void> {
    const opening = await openForEditing(file);
    if (opening.status === "failed") return send({ kind: "not opened", file, reason: opening.reason });
    const kept = await unsavedFor(stateFolder, file);
    const unsaved = kept && { text: kept.currentText, fileChanged: kept.baseText !== opening.text };
    const drawings = await loadDrawings(opening.text, file);
    send({
      kind: "opened",
      file,
      text: opening.text,
      drawings,
      ...(size !== undefined && { size }),
      ...(unsaved && { unsaved }),
    });
    await rememberRecent(stateFolder, file);
  }

  async function save(file: string, text: string, base: string): Promise<void> {
    const outcome = await saveFile({ file, text, expected: base });
    if (outcome.status === "saved") send({ kind: "saved", text });
    else if (outcome.status === "failed") send({ kind: "not saved", reason: outcome.reason });
    else send({ kind: "changed on disk", theirs: outcome.diskText });
  }

  return {
    perform(effect) {
      switch (effect.kind) {
        case "list shelf":
          void shelfEntries(stateFolder).then((entries) => send({ kind: "shelf", entries }));
          break;
        case "open":
          void open(effect.file, effect.size);
          break;
        case "solve": {
          const { kind: _, ...request } = effect;
          solver.ask(request);
          break;
        }
        case "end search":
          solver.end(effect.sequence);
          break;
        case "trade": {
          const { kind: _, ...request } = effect;
          trader.ask(request);
          break;
        }
        case "give up trade":
          trader.giveUp();
          break;
        case "save":
          void save(effect.file, effect.text, effect.base);
          break;
        case "keep":
          keeper.keep(effect.file, effect.base, effect.text);
          break;
        case "forget kept":
          keeper.forget(effect.file);
          break;
        default:
          depart(effect);
      }
    },
    settled: keeper.settled,
    async close() {
      await keeper.settled();
      await Promise.all([solver.close(), trader.close()]);
    },
  };
}
