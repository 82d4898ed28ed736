import { isLetter, keyName } from "./keys/key-name.ts";
import { bindingFor, elsewhere, placeOf } from "./keys.ts";
import type { Message, Next } from "./message.ts";
import { heldHere, type OpenGarment, type State } from "./state.ts";
import { actions } from "./update/actions.ts";
import { heard } from "./update/answers.ts";
import { next, onScreen, refuse, tell, withGarment } from "./update/next.ts";
import { heardTrade } from "./update/trading.ts";
import { typed } from "./update/typing.ts";
import { openText } from "./update/versions.ts";

/** The program as a function: what a message makes of a state, and what is to be done because of it. */
export function update(state: State, message: Message): Next {
  switch (message.kind) {
    case "key":
      return pressed(state, message.key);
    case "resized":
      return next({ ...state, terminal: { columns: message.columns, rows: message.rows } });
    case "shelf":
      return next({ ...state, shelf: { entries: message.entries, at: 0 } });
    case "opening":
      return next(onScreen(state, { kind: "opening", file: message.file }));
    case "opened":
      return opened(state, message);
    case "not opened":
      return refuse(
        onScreen(state, state.garment ? { kind: "main" } : { kind: "files" }),
        `${message.file}: ${message.reason}.`,
      );
    case "progress":
    case "answer":
    case "step":
    case "all tried":
    case "conflict":
    case "why":
      return heard(state, message);
    case "traded":
      return heardTrade(state, message);
    case "saved":
      return saved(state, message.text);
    case "changed on disk":
      return next(
        onScreen(
          withGarment(state, (garment) => ({ ...garment, saving: "no" })),
          { kind: "ask conflict", theirs: message.theirs },
        ),
      );
    case "not saved":
      return refuse(
        onScreen(
          withGarment(state, (garment) => ({ ...garment, saving: "no" })),
          state.screen.kind === "ask quit" ? { kind: "main" } : state.screen,
        ),
        `Not saved: ${message.reason}.`,
      );
  }
}

function pressed(state: State, key: string): Next {
  const place = placeOf(state);
  const binding = bindingFor(place, key);
  if (binding) {
    const why = binding.unusable?.(state);
    return why === undefined ? actions[binding.action](state) : refuse(state, why);
  }
  if (place === "typing" || place === "finding")
    return isLetter(key) ? typed(state, (text) => text + letter(key)) : next(state);
  const other = elsewhere(key);
  return other
    ? refuse(state, `${keyName(key)} (${other.words}) cannot be used here; ? lists the keys.`)
    : refuse(state, `${keyName(key)} does nothing; ? lists the keys.`);
}

const letter = (key: string): string => (key === "space" ? " " : key);

function opened(
  state: State,
  { file, text, unsaved, drawings, size }: Extract<Message, { kind: "opened" }>,
): Next {
  const { state: after, effects } = openText({ ...state, message: undefined }, file, text, {
    ...(drawings && { drawings }),
    ...(size !== undefined && { size }),
  });
  if (unsaved === undefined || unsaved.text === text) return next(after, ...effects);
  return next(onScreen(after, { kind: "ask unsaved", unsaved }), ...effects);
}

/** What a rule allowed before it was held fast is in no file, so it is lost with the screen. */
function savedWords(garment: OpenGarment): string {
  const held = heldHere(garment).length;
  if (held === 0) return `Saved ${garment.file}.`;
  return held === 1
    ? "Saved; 1 rule is held at one value now. Until you leave, a gives its range back."
    : `Saved; ${held} rules hold one value now. Until you leave, a gives their ranges back.`;
}

function saved(state: State, text: string): Next {
  const { garment } = state;
  if (!garment) return next(state);
  const after = withGarment(state, (one) => ({ ...one, saved: text, saving: "no" }));
  const told = tell(after, savedWords(garment));
  // What was changed while the file was being written is not in it.
  if (garment.version.text !== text) return next(onScreen(told, { kind: "main" }));
  const forget = { kind: "forget kept", file: garment.file } as const;
  return garment.saving === "then quit" ? next(told, forget, { kind: "quit" }) : next(told, forget);
}
