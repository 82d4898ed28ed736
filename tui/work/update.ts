import { applyEvent, type WorkEvent } from "../../src/work/events.ts";
import { ownerWords } from "../../src/work/owner-words.ts";
import { noteAt, pieceWords } from "../../src/work/place-text.ts";
import { currentPiece, stepOf } from "../../src/work/record.ts";
import { partsWith } from "../../src/work/steps.ts";
import { isLetter, keyName } from "../keys/key-name.ts";
import { type WorkAction, workKeyFor } from "./keys.ts";
import { screenFor, takeTyped } from "./measuring.ts";
import type { WorkEffect, WorkMessage, WorkNext, WorkScreen, WorkState } from "./state.ts";

/** The row counter as a function: what a message makes of a state, and what has to be on disk before it is shown. */
export function updateWork(state: WorkState, message: WorkMessage): WorkNext {
  switch (message.kind) {
    case "key":
      return pressed(state, message.key);
    case "resized":
      return next({ ...state, terminal: { columns: message.columns, rows: message.rows } });
    case "not kept":
      return refuse(state, `NOT COUNTED: the place cannot be kept, ${message.reason}.`);
    case "lost":
      return refuse(
        { ...state, standing: "looking", screen: { kind: "main" } },
        "Another copy has taken the work over; nothing was counted here. t takes it back.",
      );
    case "followed":
      return next({ ...state, record: message.record, owner: message.owner });
    case "reckoned":
      return state.screen.kind === "reckoning"
        ? next(onScreen(state, screenFor(message.answer, state.screen.measured)))
        : next(state);
    case "taken":
      return taken(state, message.record);
    case "not taken":
      return refuse(onScreen(state, { kind: "main" }), `The work cannot be taken up: ${message.reason}.`);
  }
}

const next = (state: WorkState, ...effects: readonly WorkEffect[]): WorkNext => ({
  state,
  events: [],
  effects,
});

const refuse = (state: WorkState, words: string): WorkNext =>
  next({ ...state, message: { kind: "refused", words } });

const onScreen = (state: WorkState, screen: WorkScreen): WorkState => ({ ...state, screen });

const tell = (state: WorkState, words: string): WorkState => ({ ...state, message: { kind: "done", words } });

/** What an event makes of the record, with the event to be written down. */
const happened = (state: WorkState, event: WorkEvent, ...effects: readonly WorkEffect[]): WorkNext => ({
  state: { ...state, record: applyEvent(state.record, event) },
  events: [event],
  effects,
});

function pressed(before: WorkState, key: string): WorkNext {
  const state = { ...before, message: undefined };
  const { kind } = state.screen;
  const binding = workKeyFor(kind, key);
  if (binding) {
    const why = binding.unusable?.(state);
    return why === undefined ? actions[binding.action](state, key) : refuse(state, why);
  }
  if (isTyped(kind) && isLetter(key)) return typed(state, (text) => text + (key === "space" ? " " : key));
  return refuse(
    state,
    `${keyName(key)} does nothing here; ${kind === "main" ? "? lists the keys" : "Esc goes back"}.`,
  );
}

const isTyped = (kind: WorkScreen["kind"]): boolean =>
  kind === "note" || kind === "measure length" || kind === "measure width";

const actions: Readonly<Record<WorkAction, (state: WorkState, key: string) => WorkNext>> = {
  next: (state) => stepped(state, { kind: "next" }),
  back: (state) => stepped(state, { kind: "back" }),
  digit: (state, key) =>
    state.screen.kind === "number"
      ? typed(state, (text) => text + key)
      : next(onScreen(state, { kind: "number", text: key })),
  note: (state) =>
    next(onScreen(state, { kind: "note", text: noteAt(currentPiece(state.record), here(state)) ?? "" })),
  mistake: (state) => happened(state, { kind: "mistake" }),
  measure: (state) => next(onScreen(state, { kind: "measure length", text: "" })),
  refit: (state) =>
    state.screen.kind === "measured"
      ? next(onScreen(state, { kind: "reckoning", measured: state.screen.measured, refits: true }), {
          kind: "reckon",
        })
      : next(state),
  "keep measurement": (state) =>
    "measured" in state.screen
      ? happened(
          tell(onScreen(state, { kind: "main" }), "The sheet stays; the measurement is kept at this row."),
          { kind: "measure", measured: state.screen.measured },
        )
      : next(state),
  "follow refit": (state) =>
    state.screen.kind === "refitted"
      ? happened(tell(onScreen(state, { kind: "main" }), "From this row on the new sheet is followed."), {
          kind: "measure",
          measured: state.screen.measured,
          sheet: state.screen.sheet,
        })
      : next(state),
  pieces: (state) =>
    next(
      onScreen(state, {
        kind: "pieces",
        at: state.record.pieces.findIndex(({ sheet }) => sheet.piece === state.record.piece),
      }),
    ),
  "take over": (state) => next(state, { kind: "take over" }),
  look: (state) =>
    next(tell(onScreen(state, { kind: "main" }), "You look on; t takes the work over, q leaves.")),
  accept: accepted,
  erase: (state) => typed(state, (text) => [...text].slice(0, -1).join("")),
  "erase all": (state) => typed(state, () => ""),
  go: (state) =>
    state.screen.kind === "ask jump"
      ? stepped(onScreen(state, { kind: "main" }), {
          kind: "jump",
          row: state.screen.row,
          part: state.screen.part,
        })
      : next(state),
  "other half": otherHalf,
  up: (state) => moved(state, -1),
  down: (state) => moved(state, 1),
  choose: (state) =>
    state.screen.kind === "pieces"
      ? happened(onScreen(state, { kind: "main" }), {
          kind: "choose",
          piece: state.record.pieces[state.screen.at]!.sheet.piece,
        })
      : next(state),
  "keep sheet": (state) => answered(state, state.change?.keep, "You go on with the sheet that you began."),
  "new sheet": (state) =>
    state.change?.differences.every(({ isSameSoFar }) => isSameSoFar)
      ? answered(state, state.change.take, "From here on the new sheet is followed.")
      : next(onScreen(state, { kind: "ask unlike" })),
  "new all the same": (state) =>
    answered(state, state.change?.take, "From here on the new sheet is followed."),
  leave: (state) =>
    next(
      onScreen(state, { kind: state.screen.kind === "ask unlike" ? "ask change" : "main" }),
      ...(state.screen.kind === "reckoning" ? [{ kind: "give up" } as const] : []),
    ),
  help: (state) => next(onScreen(state, { kind: "help", scroll: 0 })),
  marks: (state) => next(onScreen(state, { kind: "marks", scroll: 0 })),
  quit: (state) => next(state, { kind: "quit" }),
  suspend: (state) => next(state, { kind: "suspend" }),
};

const here = ({ record }: WorkState) => stepOf(currentPiece(record));

/** A step that cannot be taken says why, and is not written down. */
function stepped(state: WorkState, event: WorkEvent): WorkNext {
  const made = happened(state, event);
  const before = currentPiece(state.record);
  if (made.state.record === state.record)
    return refuse(
      state,
      event.kind === "back"
        ? "This is the piece's beginning."
        : event.kind === "next"
          ? `${pieceWords(before)}${before.sheet.make === undefined ? "" : ","} is finished.${state.record.pieces.length > 1 ? " p chooses another piece." : ""}`
          : `You are at row ${here(state).row} already.`,
    );
  const after = currentPiece(made.state.record);
  const told =
    after.copy === before.copy
      ? made
      : {
          ...made,
          state: tell(
            made.state,
            `${pieceWords(after)}: this is its ${event.kind === "next" ? "beginning" : "end"}.`,
          ),
        };
  const rings = state.bell && event.kind === "next" && here(made.state).phrases.length > 0;
  return rings ? { ...told, effects: [{ kind: "bell" }] } : told;
}

/** No note is longer than this, and no row's number. */
const longest = { note: 500, number: 6, "measure length": 30, "measure width": 30 } as const;

function typed(state: WorkState, change: (text: string) => string): WorkNext {
  const { screen } = state;
  if (!("text" in screen)) return next(state);
  const text = [...change(screen.text)].slice(0, longest[screen.kind]).join("");
  return next(
    onScreen(state, text === "" && screen.kind === "number" ? { kind: "main" } : { ...screen, text }),
  );
}

function accepted(state: WorkState): WorkNext {
  const { screen } = state;
  if (screen.kind === "note") {
    const after = onScreen(state, { kind: "main" });
    return happened(tell(after, "The note is kept at this row."), { kind: "note", text: screen.text });
  }
  if (screen.kind === "measure length" || screen.kind === "measure width") {
    const taken = takeTyped(screen);
    if ("problem" in taken) return refuse(state, taken.problem);
    const reckons = taken.screen.kind === "reckoning";
    return next(onScreen(state, taken.screen), ...(reckons ? [{ kind: "reckon" } as const] : []));
  }
  if (screen.kind !== "number") return next(state);
  const row = Number(screen.text);
  const piece = currentPiece(state.record);
  const parts = partsWith(piece.sheet, row);
  const { part } = stepOf(piece);
  const wanted = parts.includes(part) ? part : parts[0];
  return wanted === undefined
    ? refuse(
        onScreen(state, { kind: "main" }),
        `There is no row ${row}: ${piece.sheet.piece} has ${piece.sheet.rowsInAll}.`,
      )
    : next(onScreen(state, { kind: "ask jump", row, part: wanted }));
}

function otherHalf(state: WorkState): WorkNext {
  const { screen } = state;
  if (screen.kind !== "ask jump") return next(state);
  const parts = partsWith(currentPiece(state.record).sheet, screen.row);
  const other = parts.find((part) => part !== screen.part);
  return next(onScreen(state, { ...screen, part: other ?? screen.part }));
}

function moved(state: WorkState, by: number): WorkNext {
  const { screen, record } = state;
  if (screen.kind === "help" || screen.kind === "marks")
    return next(onScreen(state, { ...screen, scroll: Math.max(0, screen.scroll + by) }));
  if (screen.kind !== "pieces") return next(state);
  const at = Math.max(0, Math.min(record.pieces.length - 1, screen.at + by));
  return next(onScreen(state, { ...screen, at }));
}

function answered(state: WorkState, event: WorkEvent | undefined, words: string): WorkNext {
  if (!event) return next(state);
  return happened(tell({ ...state, change: undefined, screen: { kind: "main" } }, words), event);
}

function taken(state: WorkState, record: WorkState["record"]): WorkNext {
  const after: WorkState = { ...state, record, standing: "mine", owner: undefined };
  return next(
    tell(
      onScreen(after, { kind: state.change ? "ask change" : "main" }),
      "The work is yours; the place is the one kept last.",
    ),
  );
}

/** What is said where another copy has the work. */
export const heldWords = ({ owner }: WorkState): string =>
  owner ? ownerWords(owner) : "No other copy has this garment open any more.";
