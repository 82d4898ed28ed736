import { isChanged } from "../state.ts";
import { type Binding, panes } from "./binding.ts";
import { needsFit, needsOthers, needsRival, needsRule, open } from "./unusable.ts";

/** Keys of the main screen: of the rules, the choices, the drawing, and of all three. */
export const mainScreenKeys = [
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
] as const satisfies readonly Binding[];
