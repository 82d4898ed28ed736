import { readSource } from "../../src/explore/read-source.ts";
import type { Next, SolveNews } from "../message.ts";
import type { State, WhyScreen } from "../state.ts";
import { next, onScreen, refuse, within } from "./next.ts";
import { changeOpen, openScreen } from "./under-help.ts";
import { changed, solved } from "./versions.ts";

/** Asks why nothing fits, or which rules bind. */
export function askWhy(state: State): Next {
  const { garment } = state;
  if (!garment) return next(state);
  if (readSource(garment.version.text, garment.file, garment.beside).range)
    return refuse(state, "Of a file with sizes evenrow why tells it: of all, or of one by --size.");
  const sequence = state.sequence + 1;
  return next(
    onScreen(
      { ...state, sequence, message: undefined },
      { kind: "why", asked: sequence, at: 0, isDone: false },
    ),
    {
      kind: "solve",
      why: true,
      sequence,
      source: garment.version.text,
      name: garment.file,
      ...garment.beside,
    },
  );
}

/** What the solving thread tells about the question; it is also taken in while the help lies over it. */
export function heardWhy(state: State, message: SolveNews): Next {
  const screen = openScreen(state, "why");
  if (screen?.asked !== message.sequence) return next(state);
  if (message.kind === "answer") {
    const words = message.answer.kind === "failed" ? message.answer.reason : "no answer was found";
    return next(withWhy(state, { doing: words, isDone: true }));
  }
  if (message.kind !== "why") return next(state);
  const { why, doing, isDone } = message;
  return next(withWhy(state, { ...(why && { why }), doing, isDone }));
}

/** Whether a message is about the question that is asked on the screen. */
export const isAboutWhy = (state: State, { sequence }: SolveNews): boolean =>
  openScreen(state, "why")?.asked === sequence;

function withWhy(state: State, change: Partial<WhyScreen>): State {
  const screen = openScreen(state, "why");
  return screen ? changeOpen(state, { ...screen, ...change }) : state;
}

/** The answer above or below. */
export function movedInWhy(state: State, screen: WhyScreen, by: number): Next {
  const { why } = screen;
  const answers = why?.status === "does not fit" ? why.changes.length : (why?.binding.length ?? 0);
  return next(
    onScreen(
      { ...state, message: undefined },
      { ...screen, at: within(screen.at + by, 0, Math.max(0, answers - 1)) },
    ),
  );
}

/** Makes the change that is chosen, as one step that can be undone. */
export function makeChange(state: State): Next {
  const { screen } = state;
  const change =
    screen.kind === "why" && screen.why?.status === "does not fit" && screen.why.changes[screen.at];
  if (!change) return next(state);
  return changed(state, { edits: change.edits, words: `Done: ${change.words}.` });
}

/** Leaves for the rules; what was being tried there, one step after the other, goes on. */
export function leaveWhy(state: State): Next {
  const calm = onScreen({ ...state, message: undefined }, { kind: "main" });
  const { solving } = state.garment ?? {};
  const isKnown =
    solving?.allTried && !(solving.outcome.kind === "does not fit" && !solving.outcome.conflict);
  const isAsking = state.screen.kind === "why" && !state.screen.isDone;
  return isKnown && !isAsking ? next(calm) : solved(calm);
}
