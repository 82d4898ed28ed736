import { wrap } from "../../src/report/wrap.ts";
import { fitShown, type OpenGarment, type State } from "../state.ts";
import { choiceLines, choicesPane } from "./choices-pane.ts";
import { costPane, costRows } from "./cost-pane.ts";
import { drawingPane } from "./drawing-pane.ts";
import { footer } from "./footer.ts";
import type { Glyphs } from "./glyphs.ts";
import { fitHeight, fitLine, type Line, line, plainText } from "./line.ts";
import { paneTitle } from "./pane-title.ts";
import { rulesPane } from "./rules-pane.ts";
import { stepLines, stepsPane, wrapped } from "./steps-pane.ts";
import { titleLine } from "./title.ts";
import { firstLines } from "./window.ts";

/** From this width on the choices have a column of their own. */
const threeColumns = 118;

interface Room {
  readonly width: number;
  readonly height: number;
  readonly glyphs: Glyphs;
}

/** The piece, the rules, the choices and the cost, and what holds the fit back. */
export function mainScreen(state: State, garment: OpenGarment, room: Room): readonly Line[] {
  const { width, height, glyphs } = room;
  const foot = footer(state, width, 2);
  const wide = width >= threeColumns;
  const told = messageLines(state, width, glyphs);
  const stepsMost = wide && height >= 36 ? 1 : height >= 30 ? 4 : 3;
  // A message of two lines takes one from the steps, so that nothing above them moves.
  const stepsHeight = Math.max(1, stepsMost - told.length + 1);
  const bodyHeight = height - 2 - told.length - stepsHeight - foot.length;
  const body = { ...room, height: bodyHeight };
  return [
    titleLine(state, width, glyphs),
    ...(wide ? wideBody(state, garment, body, stepsMost === 1) : narrowBody(state, garment, body)),
    line(glyphs.level.repeat(width), "dim"),
    ...fitHeight(stepsPane(garment, width, stepsHeight, glyphs, stepsMost === 1), stepsHeight),
    ...told,
    ...foot,
  ];
}

/** What the last key did, or why it did nothing. */
export const messageLine = ({ message, screen }: State): Line => {
  if (screen.kind === "finding") return line(`Find a rule: ${screen.text}_`, "accent");
  if (!message) return line("");
  return message.kind === "refused" ? line(message.words, "warning") : line(message.words, "accent");
};

/** The same in as many lines as it needs, at most two. */
export function messageLines(state: State, width: number, { cut }: Glyphs): readonly Line[] {
  const one = messageLine(state);
  const text = plainText(one);
  if (state.screen.kind === "finding" || text.length <= width) return [one];
  return firstLines(
    wrap(text, width).map((part) => line(part, one[0]?.style)),
    2,
    width,
    cut,
  );
}

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
    outcome.kind === "does not fit" ? 0 : Math.min(1 + terms, Math.max(2, Math.floor(height * 0.25)));
  const perRival = width > 70 ? 1 : 2;
  const isRefused = outcome.kind === "does not fit";
  const wanted = isRefused
    ? 1 + choiceLines(garment, width).length
    : 2 + perRival * (shown?.rivals.length ?? 1);
  const { rules: all } = garment.reading;
  const owners = new Set(all.map(({ owner }) => owner)).size;
  const most = height - cost - 6;
  const expanded = garment.view.pane === "choices" || isRefused;
  const choicesLeast = Math.min(wanted, expanded ? most : Math.max(4, most - all.length));
  const rulesMost = Math.max(5, height - cost - choicesLeast);
  const withOwners = all.length + owners + 2;
  const rules = rulesMost >= withOwners ? withOwners : Math.min(all.length + 2, rulesMost);
  return { rules, choices: height - cost - rules, cost };
}

/** @param withSteps whether what one step would change is listed below the rules */
function wideBody(
  state: State,
  garment: OpenGarment,
  { width, height, glyphs }: Room,
  withSteps: boolean,
): readonly Line[] {
  const middle = Math.min(58, Math.floor(width * 0.42));
  const left = Math.floor((width - middle - 6) * 0.5);
  const right = width - middle - left - 6;
  const { rules: all } = garment.reading;
  const owners = new Set(all.map(({ owner }) => owner));
  const rules = withSteps ? Math.min(height - 6, all.length + owners.size + 3) : height;
  const shown = fitShown(garment);
  const terms = Math.max(1, shown ? costRows(shown, right) : 1);
  const cost =
    garment.solving.outcome.kind === "does not fit" ? 1 : Math.min(2 + terms, Math.floor(height / 2));
  const steps = [
    paneTitle("One step of a rule", false, middle, glyphs),
    ...wrapped(stepLines(garment), middle),
  ];
  return beside(
    [
      { lines: drawingPane(garment, fitShown(garment), left, height, glyphs), width: left },
      {
        lines: [
          ...fitHeight(rulesPane(garment, state.screen, middle, rules, glyphs), rules),
          ...(withSteps
            ? fitHeight(firstLines(steps, height - rules, middle, glyphs.cut), height - rules)
            : []),
        ],
        width: middle,
      },
      {
        lines: [
          ...fitHeight(choicesPane(garment, right, height - cost, glyphs), height - cost),
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
