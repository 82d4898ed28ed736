import { Box, Text, useInput } from "ink";
import { useSyncExternalStore } from "react";
import { frame } from "../content/frame.ts";
import type { Glyphs } from "../content/glyphs.ts";
import { paint } from "../content/paint.ts";
import type { Store } from "../store.ts";
import { keysFrom } from "../terminal/keys-from.ts";

interface AppProps {
  readonly store: Store;
  readonly glyphs: Glyphs;
  readonly colour: boolean;
}

/** The whole screen; every row is one string, because a text of its own for each part takes many times as long. */
export function App({ store, glyphs, colour }: AppProps) {
  const state = useSyncExternalStore(store.subscribe, store.state);
  useInput((input, key) => {
    for (const name of keysFrom(input, key)) store.send({ kind: "key", key: name });
  });
  return (
    <Box flexDirection="column">
      {frame(state, glyphs).map((row, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place and nothing else.
        <Text key={index} wrap="truncate">
          {paint(row, colour)}
        </Text>
      ))}
    </Box>
  );
}
