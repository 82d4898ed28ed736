import type { Effect, Next } from "../message.ts";
import type { GarmentView, OpenGarment, Screen, State } from "../state.ts";

export const next = (state: State, ...effects: readonly Effect[]): Next => ({ state, effects });

/** Says why nothing was done. */
export const refuse = (state: State, words: string): Next =>
  next({ ...state, message: { kind: "refused", words } });

/** Says what was done. */
export const tell = (state: State, words: string): State => ({ ...state, message: { kind: "done", words } });

export const onScreen = (state: State, screen: Screen): State => ({ ...state, screen });

/** Changes the open garment; without one nothing happens. */
export const withGarment = (state: State, change: (garment: OpenGarment) => OpenGarment): State =>
  state.garment ? { ...state, garment: change(state.garment) } : state;

export const withView = (state: State, change: (view: GarmentView) => Partial<GarmentView>): State =>
  withGarment(state, (garment) => ({ ...garment, view: { ...garment.view, ...change(garment.view) } }));

export const within = (value: number, least: number, most: number): number =>
  Math.max(least, Math.min(most, value));
