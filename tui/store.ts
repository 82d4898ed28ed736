import type { Effect, Message, Next } from "./message.ts";
import type { State } from "./state.ts";

/** The one place that holds the state; the view reads it and everything else sends messages. */
export interface Store {
  readonly state: () => State;
  readonly send: (message: Message) => void;
  readonly subscribe: (changed: () => void) => () => void;
}

/** @param perform does what a change of state asks for, outside of the program */
export function createStore(
  initial: State,
  update: (state: State, message: Message) => Next,
  perform: (effect: Effect) => void,
): Store {
  let state = initial;
  const listeners = new Set<() => void>();
  return {
    state: () => state,
    send(message) {
      const { state: after, effects } = update(state, message);
      const changed = after !== state;
      state = after;
      if (changed) for (const listener of listeners) listener();
      for (const effect of effects) perform(effect);
    },
    subscribe(changed) {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
  };
}
