import { currentPiece } from "../../src/work/record.ts";
import { partsWith } from "../../src/work/steps.ts";
import type { WorkPlaceName, WorkState } from "./state.ts";

/** One line of the key table, from which handlers, the help, the footer and the documents are made. */
export interface WorkKey {
  readonly keys: readonly string[];
  readonly action: WorkAction;
  readonly words: string;
  /** The same in a word or two, for the footer. */
  readonly short?: string;
  readonly places: readonly WorkPlaceName[];
  /** Why it cannot be used now; undefined where it can. */
  readonly unusable?: (state: WorkState) => string | undefined;
}

const everywhere: readonly WorkPlaceName[] = [
  "main",
  "number",
  "ask jump",
  "note",
  "measure length",
  "measure width",
  "reckoning",
  "measured",
  "refitted",
  "no refit",
  "not measured",
  "pieces",
  "help",
  "marks",
  "ask change",
  "ask unlike",
  "ask held",
];

/** What Esc leads back from; a copy or a file that is asked about has to be answered. */
const passing = everywhere.filter((place) => !["main", "ask change", "ask held"].includes(place));

const onlyMine = ({ standing }: WorkState): string | undefined =>
  standing === "mine" ? undefined : "Here you only look on; t takes the work over.";

const needsPieces = ({ record }: WorkState): string | undefined =>
  record.pieces.length > 1 ? undefined : "The garment has one piece only.";

const needsOther = ({ standing }: WorkState): string | undefined =>
  standing === "looking" ? undefined : "The work is yours already.";

const needsHalves = ({ record, screen }: WorkState): string | undefined =>
  screen.kind === "ask jump" && partsWith(currentPiece(record).sheet, screen.row).length > 1
    ? undefined
    : "That row is in one part only.";

const table = [
  {
    keys: ["space", "enter", "right", "pagedown", "step"],
    action: "next",
    words: "one row on (every press is a row; held down it runs on)",
    short: "row on",
    places: ["main"],
    unusable: onlyMine,
  },
  {
    keys: ["backspace", "left", "pageup"],
    action: "back",
    words: "one row back",
    short: "row back",
    places: ["main"],
    unusable: onlyMine,
  },
  {
    keys: ["0", "1", "2", "3", "4", "5", "6", "7", "8", "9"],
    action: "digit",
    words: "a row's number, then Enter: go to that row, once you have said yes",
    places: ["main", "number"],
    unusable: onlyMine,
  },
  {
    keys: ["n"],
    action: "note",
    words: "leave a note at this row",
    short: "note",
    places: ["main"],
    unusable: onlyMine,
  },
  {
    keys: ["x"],
    action: "mistake",
    words: "mark a mistake at this row, or take the mark away",
    short: "mistake",
    places: ["main"],
    unusable: onlyMine,
  },
  {
    keys: ["v"],
    action: "marks",
    words: "list notes, mistakes and measurements with their rows",
    places: ["main"],
  },
  {
    keys: ["m"],
    action: "measure",
    words: "tell what was measured at this row, and fit the rest anew by it",
    short: "measure",
    places: ["main"],
    unusable: onlyMine,
  },
  {
    keys: ["p"],
    action: "pieces",
    words: "choose the piece",
    short: "piece",
    places: ["main"],
    unusable: (state) => onlyMine(state) ?? needsPieces(state),
  },
  {
    keys: ["t"],
    action: "take over",
    words: "take the work over from the copy that has it",
    short: "take over",
    places: ["main", "ask held"],
    unusable: needsOther,
  },
  { keys: ["l"], action: "look", words: "only look on", short: "look on", places: ["ask held"] },
  {
    keys: ["enter"],
    action: "accept",
    words: "take what is typed",
    short: "take",
    places: ["number", "note", "measure length", "measure width"],
  },
  {
    keys: ["backspace"],
    action: "erase",
    words: "erase the last letter",
    places: ["number", "note", "measure length", "measure width"],
  },
  {
    keys: ["ctrl-u"],
    action: "erase all",
    words: "erase all that is typed",
    places: ["note", "measure length", "measure width"],
  },
  {
    keys: ["r"],
    action: "refit",
    words: "fit the rest anew by what was measured",
    short: "refit the rest",
    places: ["measured"],
  },
  {
    keys: ["k"],
    action: "keep measurement",
    words: "keep the sheet, and the measurement at this row",
    short: "keep the sheet",
    places: ["measured", "refitted", "no refit"],
  },
  {
    keys: ["enter"],
    action: "follow refit",
    words: "follow the new sheet from this row on",
    short: "follow it",
    places: ["refitted"],
  },
  {
    keys: ["enter", "y"],
    action: "go",
    words: "yes, go to that row",
    short: "go there",
    places: ["ask jump"],
  },
  {
    keys: ["tab"],
    action: "other half",
    words: "the other half above the neck",
    short: "other half",
    places: ["ask jump"],
    unusable: needsHalves,
  },
  { keys: ["up", "k"], action: "up", words: "up", places: ["pieces", "help", "marks"] },
  { keys: ["down", "j"], action: "down", words: "down", places: ["pieces", "help", "marks"] },
  { keys: ["enter"], action: "choose", words: "work on this piece", short: "choose", places: ["pieces"] },
  {
    keys: ["g"],
    action: "keep sheet",
    words: "go on with the sheet that you began",
    short: "go on with mine",
    places: ["ask change", "ask unlike"],
  },
  {
    keys: ["n"],
    action: "new sheet",
    words: "take the new sheet",
    short: "new sheet",
    places: ["ask change"],
  },
  {
    keys: ["y"],
    action: "new all the same",
    words: "take it all the same",
    short: "take it",
    places: ["ask unlike"],
  },
  {
    keys: ["escape"],
    action: "leave",
    words: "leave a passing state: typing, a question, the help",
    short: "back",
    places: passing,
  },
  { keys: ["?"], action: "help", words: "all keys", short: "keys", places: ["main"] },
  {
    keys: ["q"],
    action: "quit",
    words: "leave; the place is kept",
    short: "leave",
    places: ["main", "help", "ask held", "ask change"],
  },
  { keys: ["ctrl-z"], action: "suspend", words: "go to the shell; fg comes back", places: everywhere },
  { keys: ["ctrl-c"], action: "quit", words: "leave at once; the place is kept", places: everywhere },
] as const satisfies readonly (Omit<WorkKey, "action"> & { readonly action: string })[];

export type WorkAction = (typeof table)[number]["action"];

export const workKeys: readonly WorkKey[] = table;

/** The keys that are valid in a place, in the order of the table. */
export const workKeysAt = (place: WorkPlaceName): readonly WorkKey[] =>
  workKeys.filter(({ places }) => places.includes(place));

export const workKeyFor = (place: WorkPlaceName, key: string): WorkKey | undefined =>
  workKeysAt(place).find(({ keys }) => keys.includes(key));

/** What the documents and the help call the places. */
export const workPlaceNames: Readonly<Record<WorkPlaceName, string>> = {
  main: "At the machine",
  number: "Typing a row's number",
  "ask jump": "Asked whether to go to a row",
  note: "Typing a note",
  "measure length": "Typing a measured length",
  "measure width": "Typing a measured width",
  reckoning: "While a measurement is reckoned with",
  measured: "Told where the piece will end",
  refitted: "Told what a refit changes",
  "no refit": "Told why there is no refit",
  "not measured": "Told why nothing can be made of a measurement",
  pieces: "Choosing the piece",
  help: "Help",
  marks: "Listing notes and mistakes",
  "ask change": "Asked about a changed file",
  "ask unlike": "Asked about a sheet unlike what is knitted",
  "ask held": "Asked about another copy",
};
