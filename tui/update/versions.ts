import { applyEdits } from "../../src/explore/apply-edits.ts";
import { type Change, isRefused } from "../../src/explore/edit.ts";
import type { BeforeHold } from "../../src/explore/hold.ts";
import { type Beside, readSource } from "../../src/explore/read-source.ts";
import { rulesFor } from "../../src/explore/rules-for.ts";
import type { Effect, Next } from "../message.ts";
import {
  type GarmentView,
  isChanged,
  type OpenGarment,
  type Reading,
  ruleAt,
  type State,
  type Version,
} from "../state.ts";
import { next, refuse, tell, within } from "./next.ts";

function readingOf(text: string, { file, beside }: Pick<OpenGarment, "file" | "beside">): Reading {
  const { garment, diagnostics } = readSource(text, file, beside);
  return { ...(garment && { garment }), diagnostics, rules: garment ? rulesFor(garment) : [] };
}

/** Opens a garment's text and has it solved. */
export function openText(state: State, file: string, text: string, beside: Beside = {}): Next {
  const reading = readingOf(text, { file, beside });
  const garment: OpenGarment = {
    file,
    saved: text,
    beside,
    version: { text, beforeHold: {} },
    past: [],
    future: [],
    reading,
    solving: {
      sequence: state.sequence,
      underWay: false,
      current: false,
      outcome: { kind: "none yet" },
      steps: [],
      allTried: false,
    },
    view: startView,
    saving: "no",
  };
  return solved({ ...state, garment, screen: screenFor(reading) });
}

const startView: GarmentView = {
  pane: "rules",
  rule: 0,
  field: "from",
  choice: 0,
  placement: 0,
  zoom: 0,
  scroll: { across: 0, up: 0 },
};

const screenFor = ({ garment }: Reading): State["screen"] =>
  garment ? { kind: "main" } : { kind: "mistakes", scroll: 0 };

/** Makes a change that was asked for; one that would leave the file wrong is refused. */
export function changed(state: State, change: Change, beforeHold?: BeforeHold): Next {
  const { garment } = state;
  if (!garment) return next(state);
  if (isRefused(change)) return refuse(state, change.refused);
  const edited = applyEdits(garment.version.text, change.edits);
  if (!("text" in edited)) return refuse(state, `That cannot be changed here: ${edited.refused}.`);
  const { text } = edited;
  if (text === garment.version.text) return refuse(state, "That is how it is already.");
  const reading = readingOf(text, garment);
  if (!reading.garment) {
    const [mistake] = reading.diagnostics.filter(({ severity }) => severity === "error");
    return refuse(state, `That cannot be: ${mistake?.message ?? "the file would be wrong"}.`);
  }
  const version = { text, beforeHold: beforeHold ?? garment.version.beforeHold };
  const past = [...garment.past, garment.version];
  return moved(tell(state, change.words), { ...garment, past, future: [] }, version, reading);
}

export function undone(state: State): Next {
  const { garment } = state;
  const version = garment?.past.at(-1);
  if (!garment || !version) return next(state);
  const past = garment.past.slice(0, -1);
  const future = [garment.version, ...garment.future];
  return moved(tell(state, "Undone."), { ...garment, past, future }, version);
}

export function redone(state: State): Next {
  const { garment } = state;
  const [version, ...future] = garment?.future ?? [];
  if (!garment || !version) return next(state);
  return moved(
    tell(state, "Done again."),
    { ...garment, past: [...garment.past, garment.version], future },
    version,
  );
}

/** Another text from outside becomes the newest version; what was there can be brought back by undo. */
export function replaced(state: State, text: string, saved: string): Next {
  const { garment } = state;
  if (!garment) return next(state);
  const past = [...garment.past, garment.version];
  return moved(state, { ...garment, past, future: [], saved }, { text, beforeHold: {} });
}

function moved(
  state: State,
  garment: OpenGarment,
  version: Version,
  reading: Reading = readingOf(version.text, garment),
): Next {
  const selected = ruleAt(garment)?.id;
  const at = reading.rules.findIndex(({ id }) => id === selected);
  const rule = at < 0 ? within(garment.view.rule, 0, Math.max(0, reading.rules.length - 1)) : at;
  const fields = reading.rules[rule]?.fields ?? [];
  const { field } = garment.view;
  const view: GarmentView = {
    ...garment.view,
    rule,
    field: fields.includes(field) ? field : (fields[0] ?? "from"),
    placement: within(garment.view.placement, 0, Math.max(0, (reading.garment?.placements.length ?? 1) - 1)),
  };
  const after: OpenGarment = { ...garment, version, reading, view };
  const kept: Effect = isChanged(after)
    ? { kind: "keep", file: after.file, base: after.saved, text: version.text }
    : { kind: "forget kept", file: after.file };
  const { state: result, effects } = solved({
    ...state,
    garment: after,
    screen: screenFor(reading),
  });
  return next(result, ...effects, kept);
}

/** Asks for the fit of the text as it is now; what is shown is of before until the answer comes. */
export function solved(state: State): Next {
  const { garment } = state;
  if (!garment) return next(state);
  const sequence = state.sequence + 1;
  const underWay = garment.reading.garment !== undefined;
  const rule = ruleAt(garment)?.id;
  const { reached: _, ...before } = garment.solving;
  const solving = { ...before, sequence, underWay, current: false, steps: [], allTried: false };
  const after = { ...state, sequence, garment: { ...garment, solving } };
  if (!underWay) return next(after);
  return next(after, {
    kind: "solve",
    sequence,
    source: garment.version.text,
    name: garment.file,
    ...garment.beside,
    ...(rule !== undefined && { first: rule }),
  });
}
