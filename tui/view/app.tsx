import { useInput } from "ink";
import { useSyncExternalStore } from "react";
import type { Store } from "../store.ts";
import type { Capabilities } from "../terminal/capabilities.ts";
import { keysFrom } from "../terminal/keys-from.ts";
import { ScreenView } from "./screen-view.tsx";
import { SpokenView } from "./spoken-view.tsx";

interface AppProps {
  readonly store: Store;
  readonly capabilities: Capabilities;
}

/** Hands keys to the program and draws its state in the form that the terminal can show. */
export function App({ store, capabilities }: AppProps) {
  const state = useSyncExternalStore(store.subscribe, store.state);
  useInput((input, key) => {
    for (const name of keysFrom(input, key)) store.send({ kind: "key", key: name });
  });
  return capabilities.form === "screen" ? (
    <ScreenView state={state} glyphs={capabilities.glyphs} colour={capabilities.colour} />
  ) : (
    <SpokenView state={state} />
  );
}
