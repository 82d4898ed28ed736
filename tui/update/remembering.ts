import type { BeforeHold } from "../../src/explore/hold.ts";
import type { OpenGarment } from "../state.ts";

/** What some rules allow now, kept for when they are let go. */
export function remembering({ version, reading }: OpenGarment, ids: readonly string[]): BeforeHold {
  const added = reading.rules.flatMap(({ id, allows }) =>
    ids.includes(id) && allows.kind === "values" ? [[id, allows.allowed] as const] : [],
  );
  return { ...version.beforeHold, ...Object.fromEntries(added) };
}
