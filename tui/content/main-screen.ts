import { fitShown, type OpenGarment, type State } from "../state.ts";
import { choicesPane } from "./choices-pane.ts";
import { costPane } from "./cost-pane.ts";
import { drawingPane } from "./drawing-pane.ts";
import { footer } from "./footer.ts";
import type { Glyphs } from "./glyphs.ts";
import { fitHeight, fitLine, type Line, line } from "./line.ts";
import { rulesPane } from "./rules-pane.ts";
import { stepsPane } from "./steps-pane.ts";
import { titleLine } from "./title.ts";

/** From this width on the choices have a column of their own. */
const threeColumns = 118;

interface Room {
  readonly width: number;
  readonly height: number;
  readonly glyphs: Glyphs;
}

/** The piece, the rules, the choices and the cost, and below them what holds the fit back. */
export function mainScreen(state: State, garment: OpenGarment, room: Room): readonly Line[] {
  const { width, height, glyphs } = room;
  const stepsHeight = height >= 40 ? 6 : height >= 30 ? 4 : 3;
  const foot = footer(state, width, 2);
  const bodyHeight = height - 1 - 1 - stepsHeight - 1 - foot.length;
  const body = width >= threeColumns ? wideBody : narrowBody;
  return [
    titleLine(state, width),
    ...body(state, garment, { ...room, height: bodyHeight }),
    line(glyphs.level.repeat(width), "dim"),
    ...fitHeight(stepsPane(garment, width, stepsHeight), stepsHeight),
    messageLine(state),
    ...foot,
  ];
}

/** What the last key did, or why it did nothing. */
export const messageLine = ({ message, screen }: State): Line => {
  if (screen.kind === "finding") return line(`Find a rule: ${screen.text}_`, "accent");
  if (!message) return line("");
  return message.kind === "refused" ? line(message.words, "warning") : line(message.words, "accent");
};

function narrowBody(state: State, garment: OpenGarment, { width, height, glyphs }: Room): readonly Line[] {
  const left = Math.min(44, Math.max(18, Math.floor(width * 0.35)));
  const right = width - left - 3;
  const { rules, choices, cost } = heights(garment, height, right);
  const drawing = drawingPane(garment, fitShown(garment), left, height, glyphs);
  return beside(
    [
      { lines: drawing, width: left },
      {
        lines: [
          ...fitHeight(rulesPane(garment, state.screen, right, rules, glyphs), rules),
          ...fitHeight(choicesPane(garment, right, choices, glyphs), choices),
          ...fitHeight(costPane(garment, right, cost, glyphs), cost),
        ],
        width: right,
      },
    ],
    height,
    glyphs,
  );
}

/** The part that has the keys gets what room there is; the others keep enough to be read. */
function heights(
  garment: OpenGarment,
  height: number,
  width: number,
): { readonly rules: number; readonly choices: number; readonly cost: number } {
  const { shown, outcome } = garment.solving;
  const terms = Math.max(1, fitShown(garment)?.terms.length ?? 1);
  const cost =
    outcome.kind === "does not fit" ? 0 : Math.min(1 + terms, Math.max(2, Math.floor(height * 0.2)));
  const perRival = width > 70 ? 1 : 2;
  const wanted = outcome.kind === "does not fit" ? 8 : 2 + perRival * (shown?.rivals.length ?? 1);
  const rulesWanted = 2 + garment.reading.rules.length;
  const least = garment.view.pane === "choices" ? Math.min(wanted, height - cost - 5) : Math.min(wanted, 4);
  const rules = Math.min(rulesWanted + 6, Math.max(5, height - cost - least));
  return { rules, choices: height - cost - rules, cost };
}

function wideBody(state: State, garment: OpenGarment, { width, height, glyphs }: Room): readonly Line[] {
  const middle = Math.min(60, Math.floor(width * 0.4));
  const left = Math.floor((width - middle - 6) * 0.54);
  const right = width - middle - left - 6;
  const terms = Math.max(1, fitShown(garment)?.terms.length ?? 1);
  const cost =
    garment.solving.outcome.kind === "does not fit" ? 1 : Math.min(2 + terms, Math.floor(height / 2));
  const choices = height - cost;
  return beside(
    [
      { lines: drawingPane(garment, fitShown(garment), left, height, glyphs), width: left },
      { lines: rulesPane(garment, state.screen, middle, height, glyphs), width: middle },
      {
        lines: [
          ...fitHeight(choicesPane(garment, right, choices, glyphs), choices),
          ...fitHeight(costPane(garment, right, cost, glyphs), cost),
        ],
        width: right,
      },
    ],
    height,
    glyphs,
  );
}

/** Columns of lines side by side, parted by an upright rule. */
export function beside(
  columns: readonly { readonly lines: readonly Line[]; readonly width: number }[],
  height: number,
  glyphs: Glyphs,
): readonly Line[] {
  return Array.from({ length: height }, (_, index) =>
    columns.flatMap(
      ({ lines, width }, at): Line => [
        ...(at === 0 ? [] : [{ text: ` ${glyphs.upright} `, style: "dim" } as const]),
        ...fitLine(lines[index] ?? [], width, glyphs.cut),
      ],
    ),
  );
}
