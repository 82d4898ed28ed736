import { Box, Text } from "ink";
import { frame } from "../content/frame.ts";
import type { Glyphs } from "../content/glyphs.ts";
import { paint } from "../content/paint.ts";
import type { State } from "../state.ts";

interface ScreenViewProps {
  readonly state: State;
  readonly glyphs: Glyphs;
  readonly colour: boolean;
}

/** The whole screen; every row is one string, because a text of its own for each part takes many times as long. */
export function ScreenView({ state, glyphs, colour }: ScreenViewProps) {
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
