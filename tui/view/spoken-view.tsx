import { Box, Text } from "ink";
import { spokenLines } from "../content/spoken.ts";
import type { State } from "../state.ts";

/** The facts of the screen as lines of text, one fact a line. */
export function SpokenView({ state }: { readonly state: State }) {
  return (
    <Box flexDirection="column">
      {spokenLines(state).map((text, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines have no name but their place.
        <Text key={index}>{text}</Text>
      ))}
    </Box>
  );
}
