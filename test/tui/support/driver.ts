import { readFileSync } from "node:fs";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { type Answer, answerFor } from "../../../src/explore/answer.ts";
import { readSource } from "../../../src/explore/read-source.ts";
import type { Effect, Message } from "../../../tui/message.ts";
import { initialState, type OpenGarment, type State } from "../../../tui/state.ts";
import { update } from "../../../tui/update.ts";

export const sample = (name: string): string =>
  readFileSync(new URL(`../../../samples/${name}.yaml`, import.meta.url), "utf8");

export const sampleNames = ["cable-sleeve", "front", "hat", "scarf", "sleeve", "too-narrow"] as const;

/** Looks for a garment's fit in this thread. */
export async function answerTo(source: string): Promise<Answer> {
  const reading = readSource(source, "test.yaml");
  const { garment } = reading;
  if (!garment) throw new Error("the garment of a test is sound");
  return answerFor({ ...reading, garment }, simplexEngine, { rivals: 5, timeLimitMs: 60_000 });
}

/** The program without a terminal: messages in, the state and all effects out. */
export interface Driver {
  state: () => State;
  garment: () => OpenGarment;
  effects: Effect[];
  send: (...messages: readonly Message[]) => void;
  press: (...keys: readonly string[]) => void;
  type: (text: string) => void;
  /** Answers the newest request for a fit as the solving thread would. */
  solve: () => Promise<void>;
  text: () => string;
}

export function driver(columns = 80, rows = 24): Driver {
  let state = initialState({ columns, rows });
  const effects: Effect[] = [];
  const send = (...messages: readonly Message[]): void => {
    for (const message of messages) {
      const next = update(state, message);
      state = next.state;
      effects.push(...next.effects);
    }
  };
  const garment = (): OpenGarment => {
    if (!state.garment) throw new Error("no garment is open");
    return state.garment;
  };
  const press = (...keys: readonly string[]): void => {
    for (const key of keys) send({ kind: "key", key });
  };
  return {
    state: () => state,
    garment,
    effects,
    send,
    press,
    type: (text) => press(...[...text].map((letter) => (letter === " " ? "space" : letter))),
    async solve() {
      const request = effects.findLast((effect) => effect.kind === "solve");
      if (request?.kind !== "solve") throw new Error("no fit was asked for");
      const answer = await answerTo(request.source);
      send({ kind: "answer", sequence: request.sequence, answer });
    },
    text: () => garment().version.text,
  };
}

/** A driver with a sample open and solved. */
export async function opened(name: string, columns = 80, rows = 24): Promise<Driver> {
  const program = driver(columns, rows);
  program.send({ kind: "opened", file: `${name}.yaml`, text: sample(name) });
  await program.solve();
  return program;
}
