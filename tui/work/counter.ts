import { livingOwnerOf } from "../../src/state/lock.ts";
import { type KeptWork, keptWork, type WorkPlace } from "../../src/state/work-place.ts";
import { type Keeping, startWork, type WorkSession } from "../../src/state/work-session.ts";
import { applyEvents, type WorkEvent } from "../../src/work/events.ts";
import type { WorkRecord } from "../../src/work/record.ts";
import type { WorkEffect, WorkMessage, WorkState } from "./state.ts";
import { updateWork } from "./update.ts";

/** The row counter with its memory on disk; it knows nothing of a terminal. */
export interface Counter {
  readonly state: () => WorkState;
  /** Takes messages together: all that they count is on disk before any of it is shown. */
  readonly receive: (messages: readonly WorkMessage[]) => void;
  /** Looks what another copy has kept meanwhile, where this one only looks on. */
  readonly follow: () => void;
  readonly close: () => void;
}

export interface CounterOptions {
  readonly place: WorkPlace;
  readonly initial: WorkState;
  readonly takeOver: boolean;
  /** To be written down at once. */
  readonly first: readonly WorkEvent[];
  /**
   * Makes a state ready to be shown; what it gives back shows it. Split in two so that as little time as possible lies
   * between the disk and the screen: a program that is killed there has counted a row that was not shown.
   */
  readonly prepare: (state: WorkState) => () => void;
  readonly perform: (effect: Exclude<WorkEffect["kind"], "take over">) => void;
}

export function createCounter({
  place,
  initial,
  takeOver,
  first,
  prepare,
  perform,
}: CounterOptions): Counter {
  let state = initial;
  let session: WorkSession | undefined;

  /** Also tries again to begin, where the folder could not be written to before. */
  function keep(record: WorkRecord, events: readonly WorkEvent[]): Keeping {
    if (!session) {
      const starting = startWork(place, false);
      if (starting.status === "failed") return starting;
      if (starting.status === "held") return { status: "lost" };
      session = starting.session;
    }
    return session.keep(record, events);
  }

  function receive(messages: readonly WorkMessage[]): void {
    const before = state;
    const events: WorkEvent[] = [];
    const effects: WorkEffect[] = [];
    let after = before;
    for (const message of messages) {
      const made = updateWork(after, message);
      after = made.state;
      events.push(...made.events);
      effects.push(...made.effects);
    }
    let show = prepare(after);
    if (events.length > 0) {
      const keeping = keep(before.record, events);
      if (keeping.status !== "kept") {
        after = refused(before, keeping);
        show = prepare(after);
        effects.splice(0, effects.length, ...effects.filter(({ kind }) => kind !== "bell"));
      }
    }
    state = after;
    show();
    for (const { kind } of effects)
      if (kind === "take over") take();
      else perform(kind);
  }

  function refused(before: WorkState, keeping: Exclude<Keeping, { status: "kept" }>): WorkState {
    if (keeping.status === "failed")
      return updateWork(before, { kind: "not kept", reason: keeping.reason }).state;
    session?.close();
    session = undefined;
    return updateWork({ ...before, owner: livingOwnerOf(place.lock) }, { kind: "lost" }).state;
  }

  function take(): void {
    session?.close();
    const starting = startWork(place, true);
    if (starting.status !== "open") {
      const reason = starting.status === "failed" ? starting.reason : "another copy was quicker";
      receive([{ kind: "not taken", reason }]);
      return;
    }
    session = starting.session;
    const record = recordIn(starting.kept) ?? state.record;
    const keeping = session.keep(record, []);
    receive(
      keeping.status === "kept"
        ? [{ kind: "taken", record }]
        : [
            {
              kind: "not taken",
              reason: keeping.status === "failed" ? keeping.reason : "another copy was quicker",
            },
          ],
    );
  }

  function begin(): void {
    const starting = startWork(place, takeOver);
    if (starting.status === "held") {
      state = { ...state, standing: "looking", owner: starting.owner, screen: { kind: "ask held" } };
      prepare(state)();
      return;
    }
    if (starting.status === "open") {
      session = starting.session;
      state = { ...state, record: keptSince(recordIn(starting.kept), state.record) };
    }
    const keeping = keep(state.record, first);
    if (keeping.status === "kept") {
      state = { ...state, record: applyEvents(state.record, first) };
    } else state = refused(state, keeping);
    prepare(state)();
  }

  begin();
  return {
    state: () => state,
    receive,
    follow() {
      if (state.standing !== "looking") return;
      const record = recordIn(keptWork(place)) ?? state.record;
      const owner = livingOwnerOf(place.lock);
      if (owner?.token === state.owner?.token && JSON.stringify(record) === JSON.stringify(state.record))
        return;
      receive([{ kind: "followed", record, owner }]);
    },
    close: () => session?.close(),
  };
}

const recordIn = (kept: KeptWork): WorkRecord | undefined =>
  kept.status === "kept" ? kept.record : undefined;

/** Between looking and taking the lock another copy may have gone on; a record of another text is not that one. */
const keptSince = (kept: WorkRecord | undefined, found: WorkRecord): WorkRecord =>
  kept?.garmentText === found.garmentText ? kept : found;
