import { printable, shown } from "../src/diagnostics/shown.ts";
import { fitShown, isChanged, type OpenGarment, ruleAt, type State } from "./state.ts";

/** Where a key is valid: a screen, or one of the panes of the main screen. */
export type Place =
  | "rules"
  | "choices"
  | "drawing"
  | "files"
  | "opening"
  | "mistakes"
  | "typing"
  | "finding"
  | "help"
  | "sheet"
  | "compare"
  | "ask quit"
  | "ask unsaved"
  | "ask conflict";

/** One line of the key table, from which handlers, the help screen, the footer and the documents are made. */
export interface KeyBinding {
  /** The keys by name; any of them does it. */
  readonly keys: readonly string[];
  readonly action: Action;
  /** What it does, for the help and the documents. */
  readonly words: string;
  /** The same in a word or two, for the footer; bindings without are not shown there. */
  readonly short?: string;
  readonly places: readonly Place[];
  /** Why it cannot be used now; undefined where it can. */
  readonly unusable?: (state: State) => string | undefined;
}

const panes = ["rules", "choices", "drawing"] as const;
const everywhere = [
  ...panes,
  ...(["files", "opening", "mistakes", "typing", "finding", "help", "sheet", "compare"] as const),
  ...(["ask quit", "ask unsaved", "ask conflict"] as const),
] as const;

const open = (state: State, why: (garment: OpenGarment) => string | undefined): string | undefined =>
  state.garment ? why(state.garment) : "There is no garment open.";

const needsFit = (state: State): string | undefined =>
  open(state, (garment) => (fitShown(garment) ? undefined : "There is no fit to look at yet."));

const needsCurrentFit = (state: State): string | undefined =>
  open(state, ({ solving }) =>
    solving.shown && solving.current
      ? undefined
      : solving.underWay
        ? "The fit is still being sought; wait for it."
        : "Nothing fits, so there is nothing to take a value from.",
  );

const needsRule = (state: State): string | undefined =>
  open(state, (garment) => (ruleAt(garment) ? undefined : "There is no rule here."));

const needsRival = (state: State): string | undefined =>
  open(state, ({ solving, view }) =>
    !solving.shown || !solving.current
      ? needsCurrentFit(state)
      : view.choice === 0
        ? "This is the best fit already; choose one of its rivals below it."
        : undefined,
  );

const needsOthers = (state: State): string | undefined =>
  open(state, ({ solving }) =>
    !solving.shown
      ? "There is no fit to compare."
      : solving.shown.rivals.length === 0
        ? "There is no rival to put beside the best fit."
        : undefined,
  );

const table = [
  {
    keys: ["up", "k"],
    action: "up",
    words: "the rule above",
    places: ["rules"],
  },
  { keys: ["down", "j"], action: "down", words: "the rule below", short: "rule", places: ["rules"] },
  { keys: ["left", "h"], action: "left", words: "the field to the left", places: ["rules"] },
  {
    keys: ["right", "l"],
    action: "right",
    words: "the field to the right: least, most, preferred, weight",
    short: "field",
    places: ["rules"],
  },
  { keys: ["home"], action: "first", words: "the first rule", places: ["rules"] },
  { keys: ["end"], action: "last", words: "the last rule", places: ["rules"] },
  {
    keys: ["+", "="],
    action: "more",
    words: "the field one step up",
    short: "more",
    places: ["rules"],
    unusable: needsRule,
  },
  {
    keys: ["-", "_"],
    action: "less",
    words: "the field one step down",
    short: "less",
    places: ["rules"],
    unusable: needsRule,
  },
  {
    keys: ["enter"],
    action: "type",
    words: "type the field anew: 4, or 2..9, or 2, 4, 6; nothing takes a preference out",
    short: "type",
    places: ["rules"],
    unusable: needsRule,
  },
  {
    keys: ["space"],
    action: "hold",
    words: "hold the rule fast at its present value, or let it go",
    short: "hold",
    places: ["rules"],
    unusable: needsRule,
  },
  {
    keys: ["a"],
    action: "let all go",
    words: "let go of all that was held fast here",
    places: ["rules", "choices"],
    unusable: (state) =>
      open(state, ({ version }) =>
        Object.keys(version.beforeHold).length === 0 ? "Nothing was held fast here." : undefined,
      ),
  },
  { keys: ["up", "k"], action: "up", words: "the choice above", places: ["choices"] },
  {
    keys: ["down", "j"],
    action: "down",
    words: "the choice below; the drawing shows it",
    short: "choice",
    places: ["choices"],
    unusable: needsFit,
  },
  {
    keys: ["enter"],
    action: "take",
    words: "take the rival as the new start: all that was chosen for it is held fast",
    short: "take",
    places: ["choices", "compare"],
    unusable: needsRival,
  },
  { keys: ["up", "k"], action: "up", words: "scroll the drawing up", places: ["drawing"] },
  { keys: ["down", "j"], action: "down", words: "scroll the drawing down", places: ["drawing"] },
  { keys: ["left", "h"], action: "left", words: "scroll the drawing to the left", places: ["drawing"] },
  {
    keys: ["right", "l"],
    action: "right",
    words: "scroll the drawing to the right",
    short: "scroll",
    places: ["drawing"],
  },
  {
    keys: ["e"],
    action: "end search",
    words: "end a search that takes long, with the best so far",
    short: "end the search",
    places: panes,
    unusable: (state) =>
      open(state, ({ solving }) => (solving.underWay ? undefined : "Nothing is being sought.")),
  },
  { keys: ["tab"], action: "next pane", words: "the next part of the screen", short: "part", places: panes },
  { keys: ["shift-tab"], action: "previous pane", words: "the part of the screen before", places: panes },
  {
    keys: ["c"],
    action: "compare",
    words: "put the best fit and a rival side by side",
    short: "compare",
    places: panes,
    unusable: needsOthers,
  },
  {
    keys: ["v"],
    action: "sheet",
    words: "view the working sheet",
    short: "sheet",
    places: panes,
    unusable: needsFit,
  },
  {
    keys: ["p"],
    action: "next placement",
    words: "the next piece or placement",
    places: panes,
    unusable: (state) =>
      open(state, ({ reading }) =>
        (reading.garment?.placements.length ?? 0) > 1 ? undefined : "There is one placement and no other.",
      ),
  },
  {
    keys: ["z"],
    action: "zoom in",
    words: "draw larger",
    short: "larger",
    places: panes,
    unusable: needsFit,
  },
  {
    keys: ["x"],
    action: "zoom out",
    words: "draw smaller",
    places: panes,
    unusable: (state) =>
      open(state, ({ view }) => (view.zoom > 0 ? undefined : "The whole piece is in view already.")),
  },
  {
    keys: ["u"],
    action: "undo",
    words: "undo, without limit",
    short: "undo",
    places: [...panes, "mistakes"],
    unusable: (state) =>
      open(state, ({ past }) => (past.length > 0 ? undefined : "There is nothing to undo.")),
  },
  {
    keys: ["ctrl-r"],
    action: "redo",
    words: "redo",
    places: [...panes, "mistakes"],
    unusable: (state) =>
      open(state, ({ future }) => (future.length > 0 ? undefined : "There is nothing to redo.")),
  },
  {
    keys: ["/"],
    action: "find",
    words: "jump to a rule by its name",
    short: "find",
    places: panes,
  },
  {
    keys: ["s"],
    action: "save",
    words: "save into the file; comments, order and spacing stay",
    short: "save",
    places: [...panes, "mistakes"],
    unusable: (state) =>
      open(state, (garment) =>
        garment.saving !== "no"
          ? "It is being saved already."
          : isChanged(garment)
            ? undefined
            : "Nothing was changed since the last save.",
      ),
  },
  { keys: ["o"], action: "files", words: "open another garment", places: [...panes, "mistakes"] },
  { keys: ["up", "k"], action: "up", words: "the garment above", places: ["files"] },
  { keys: ["down", "j"], action: "down", words: "the garment below", short: "choose", places: ["files"] },
  { keys: ["enter"], action: "open", words: "open it", short: "open", places: ["files"] },
  {
    keys: ["r"],
    action: "read again",
    words: "read the file again, once it is put right",
    short: "read again",
    places: ["mistakes"],
  },
  {
    keys: ["up", "k"],
    action: "up",
    words: "a line up",
    places: ["mistakes", "help", "sheet"],
  },
  {
    keys: ["down", "j"],
    action: "down",
    words: "a line down",
    short: "scroll",
    places: ["mistakes", "help", "sheet"],
  },
  { keys: ["pageup"], action: "page up", words: "a page up", places: ["mistakes", "help", "sheet"] },
  {
    keys: ["pagedown", "space"],
    action: "page down",
    words: "a page down",
    places: ["mistakes", "help", "sheet"],
  },
  {
    keys: ["left", "h", "up", "k"],
    action: "up",
    words: "the rival before",
    places: ["compare"],
  },
  {
    keys: ["right", "l", "down", "j"],
    action: "down",
    words: "the next rival",
    short: "rival",
    places: ["compare"],
  },
  {
    keys: ["enter"],
    action: "accept",
    words: "take what is typed",
    short: "take",
    places: ["typing", "finding"],
  },
  { keys: ["backspace"], action: "erase", words: "erase the last letter", places: ["typing", "finding"] },
  { keys: ["ctrl-u"], action: "erase all", words: "erase all that is typed", places: ["typing", "finding"] },
  {
    keys: ["s"],
    action: "save and quit",
    words: "save and leave",
    short: "save and leave",
    places: ["ask quit"],
  },
  {
    keys: ["d"],
    action: "quit unsaved",
    words: "leave without saving",
    short: "leave without saving",
    places: ["ask quit"],
  },
  {
    keys: ["enter"],
    action: "take unsaved",
    words: "take up the changes that were not saved",
    short: "take them up",
    places: ["ask unsaved"],
  },
  {
    keys: ["d"],
    action: "drop unsaved",
    words: "drop them and go on from the file",
    short: "drop them",
    places: ["ask unsaved"],
  },
  {
    keys: ["m"],
    action: "write mine",
    words: "write mine over what is on disk",
    short: "write mine",
    places: ["ask conflict"],
  },
  {
    keys: ["t"],
    action: "take theirs",
    words: "take what is on disk; mine can be brought back by undo",
    short: "take theirs",
    places: ["ask conflict"],
  },
  {
    keys: ["escape"],
    action: "leave",
    words: "leave a passing state: typing, a question, the help, the sheet",
    short: "back",
    places: everywhere.filter((place) => !["files", "opening", "mistakes"].includes(place)),
  },
  {
    keys: ["q"],
    action: "leave",
    words: "close",
    places: ["help", "sheet", "compare"],
  },
  {
    keys: ["?"],
    action: "help",
    words: "all keys",
    short: "keys",
    places: [...panes, "files", "mistakes", "sheet", "compare"],
  },
  {
    keys: ["q"],
    action: "quit",
    words: "quit; asks first if something is not saved",
    short: "quit",
    places: [...panes, "files", "opening", "mistakes"],
  },
  {
    keys: ["ctrl-z"],
    action: "suspend",
    words: "go to the shell; fg comes back",
    places: everywhere,
  },
  {
    keys: ["ctrl-c"],
    action: "quit at once",
    words: "leave at once; what is not saved is offered the next time",
    places: everywhere,
  },
] as const satisfies readonly (Omit<KeyBinding, "action"> & { readonly action: string })[];

export type Action = (typeof table)[number]["action"];

export const keyTable: readonly KeyBinding[] = table;

/** What has the keys now. */
export function placeOf({ screen, garment }: State): Place {
  if (screen.kind !== "main") return screen.kind;
  return garment?.view.pane ?? "rules";
}

/** The keys that are valid in a place, in the order of the table. */
export const bindingsAt = (place: Place): readonly KeyBinding[] =>
  keyTable.filter(({ places }) => places.includes(place));

export const bindingFor = (place: Place, key: string): KeyBinding | undefined =>
  bindingsAt(place).find(({ keys }) => keys.includes(key));

/** Where else a key means something, for one that means nothing here. */
export function elsewhere(key: string): KeyBinding | undefined {
  return keyTable.find(({ keys }) => keys.includes(key));
}

const names: Readonly<Record<string, string>> = {
  up: "Up",
  down: "Down",
  left: "Left",
  right: "Right",
  home: "Home",
  end: "End",
  enter: "Enter",
  space: "Space",
  tab: "Tab",
  "shift-tab": "Shift-Tab",
  pageup: "Page Up",
  pagedown: "Page Down",
  backspace: "Backspace",
  escape: "Esc",
  step: "the step key",
  "ctrl-c": "Ctrl-C",
  "ctrl-r": "Ctrl-R",
  "ctrl-u": "Ctrl-U",
  "ctrl-z": "Ctrl-Z",
};

/** A key as it is printed on the keyboard; what is no key, such as a paste, made fit to print. */
export const keyName = (key: string): string => (Object.hasOwn(names, key) ? names[key]! : shown(key));

/** Keys that put a letter have that letter as their name, save for the space; what steers a terminal is no letter. */
export const isLetter = (key: string): boolean =>
  key === "space" || ([...key].length === 1 && printable(key) === key);
