import type { WorkEvent } from "../../../src/work/events.ts";
import { newRecord, type WorkRecord } from "../../../src/work/record.ts";
import type { WorkEffect, WorkMessage, WorkState } from "../../../tui/work/state.ts";
import { updateWork } from "../../../tui/work/update.ts";
import { pieceOfSample } from "../../src/work/support/records.ts";

export const sleeveAndFront: WorkRecord = newRecord(
  { pieces: [await pieceOfSample("sleeve"), await pieceOfSample("front")] },
  "text",
);

/** The screen at the machine without a terminal or a disk: all that it wanted kept and done. */
export function workDriver(changes: Partial<WorkState> = {}) {
  let state: WorkState = {
    terminal: { columns: 80, rows: 24 },
    file: "garment.yaml",
    record: sleeveAndFront,
    standing: "mine",
    owner: undefined,
    screen: { kind: "main" },
    change: undefined,
    message: undefined,
    bell: false,
    ...changes,
  };
  const events: WorkEvent[] = [];
  const effects: WorkEffect["kind"][] = [];
  const send = (message: WorkMessage): void => {
    const next = updateWork(state, message);
    state = next.state;
    events.push(...next.events);
    effects.push(...next.effects.map(({ kind }) => kind));
  };
  return {
    state: () => state,
    events,
    effects,
    send,
    press: (...keys: readonly string[]) => {
      for (const key of keys) send({ kind: "key", key });
    },
  };
}
