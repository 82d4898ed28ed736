import type { State } from "../state.ts";
import { footer } from "./footer.ts";
import type { Glyphs } from "./glyphs.ts";
import { fitHeight, fitLine, type Line, line } from "./line.ts";
import { mainScreen, messageLines } from "./main-screen.ts";
import {
  compareLines,
  filesScreen,
  helpLines,
  mistakesLines,
  questionLines,
  sheetLines,
} from "./other-screens.ts";
import { titleLine } from "./title.ts";
import { tradeLines } from "./trade-screen.ts";
import { whyLines } from "./why-screen.ts";

/** Smaller than this there is no room for the rules. */
const leastSize = { columns: 60, rows: 20 } as const;

/**
 * The whole screen as lines, each as wide as the terminal. One row of the terminal stays free, because a frame of
 * its full height would scroll.
 */
export function frame(state: State, glyphs: Glyphs): readonly Line[] {
  const { columns, rows } = state.terminal;
  const height = Math.max(1, rows - 1);
  if (columns < leastSize.columns || rows < leastSize.rows)
    return fitHeight(tooSmall(state), height).map((one) => fitLine(one, columns, glyphs.cut));
  return fitHeight(content(state, columns, height, glyphs), height).map((one) =>
    fitLine(one, columns, glyphs.cut),
  );
}

const tooSmall = ({ terminal: { columns, rows } }: State): readonly Line[] => [
  line("The window is too small."),
  line(`It needs ${leastSize.columns} columns, ${leastSize.rows} rows;`),
  line(`it has ${columns} and ${rows}.`),
  line("Make it larger. Nothing is lost."),
  line("Ctrl-C leaves."),
];

function content(state: State, width: number, height: number, glyphs: Glyphs): readonly Line[] {
  const { screen, garment } = state;
  if (garment && (screen.kind === "main" || screen.kind === "typing" || screen.kind === "finding"))
    return mainScreen(state, garment, { width, height, glyphs });
  const foot = footer(state, width, 2);
  const told = messageLines(state, width, glyphs);
  const room = height - 1 - told.length - foot.length;
  return [
    titleLine(state, width, glyphs),
    ...fitHeight(body(state, width, room, glyphs), room),
    ...told,
    ...foot,
  ];
}

function body(state: State, width: number, height: number, glyphs: Glyphs): readonly Line[] {
  const { screen, garment } = state;
  switch (screen.kind) {
    case "help":
      return scrolledTo(helpLines(width), screen.scroll, height);
    case "sheet":
      return garment ? scrolledTo(sheetLines(garment, width), screen.scroll, height) : [];
    case "mistakes":
      return garment ? scrolledTo(mistakesLines(garment, width), screen.scroll, height) : [];
    case "compare":
      return garment ? compareLines(garment, screen.rival, width, height, glyphs) : [];
    case "trade":
      return garment ? tradeLines(garment, screen, width, height, glyphs) : [];
    case "why":
      return whyLines(screen, width, height, glyphs);
    case "ask quit":
    case "ask unsaved":
    case "ask conflict":
      return [line(""), ...questionLines(screen, garment, width)];
    default:
      return filesScreen(state, width, height, glyphs);
  }
}

/** The part of a long text that is in view; past its end there is nothing more to scroll to. */
function scrolledTo(lines: readonly Line[], scroll: number, height: number): readonly Line[] {
  const from = Math.min(scroll, Math.max(0, lines.length - height));
  return lines.slice(from, from + height);
}
