import { renderDiagnostics } from "../../src/diagnostics/render.ts";
import { differences } from "../../src/report/differences.ts";
import { counted } from "../../src/report/words.ts";
import { wrap } from "../../src/report/wrap.ts";
import { buildSheet } from "../../src/sheet/build-sheet.ts";
import { sheetText } from "../../src/sheet/text/sheet-text.ts";
import { fitShown, heldHere, type OpenGarment, type Screen, type State } from "../state.ts";
import { drawingPane } from "./drawing-pane.ts";
import type { Glyphs } from "./glyphs.ts";
import { keyLines } from "./key-lines.ts";
import { keySections } from "./key-list.ts";
import { type Line, line, plainText } from "./line.ts";
import { beside } from "./main-screen.ts";
import { windowAround } from "./window.ts";

/** Widest text that reads well. */
const readingWidth = 100;

/** The samples and the files that were opened lately. */
export function filesScreen(
  { shelf, screen }: State,
  width: number,
  height: number,
  glyphs: Glyphs,
): readonly Line[] {
  if (screen.kind === "opening") return [line(""), line(`Opening ${screen.file} ...`)];
  const heads = { recent: "Opened lately", sample: "Samples to try", new: "A garment of your own" } as const;
  const lines: Line[] = [];
  let at = 0;
  shelf.entries.forEach((entry, index) => {
    if (entry.kind !== shelf.entries[index - 1]?.kind)
      lines.push(line(""), line(heads[entry.kind], "strong"));
    if (index === shelf.at) at = lines.length;
    const lead = index === shelf.at ? `${glyphs.pointer} ` : "  ";
    lines.push([
      { text: lead, style: "accent" },
      { text: entry.title, style: index === shelf.at ? "chosen" : "plain" },
      { text: entry.kind === "new" ? "" : `  ${entry.file}`, style: "dim" },
    ]);
  });
  return [
    ...wrap(
      "Evenrow fits a cord, a cable or a repeat whole onto a knitted piece. Open a garment to push its rules about.",
      width,
    ).map((text) => line(text)),
    ...windowAround(lines, at, height - 2),
  ];
}

/** Every mistake with its place; the file is not touched. */
export function mistakesLines({ reading, file, version }: OpenGarment, width: number): readonly Line[] {
  const text = renderDiagnostics(reading.diagnostics, { file, source: version.text });
  return [
    line("The file has mistakes, so there is nothing to fit yet. It is left as it is.", "warning"),
    line("Put it right in an editor, save it there, and press r here to read it again."),
    line(""),
    ...text.split("\n").map((one) => line(one.slice(0, width))),
  ];
}

const keyWidth = 16;

/** Every key there is, by the places where it is valid. */
export const helpLines = (width: number): readonly Line[] => [
  line("All keys", "strong"),
  ...keyLines(keySections(), width, keyWidth),
];

/** The working sheet of the fit that is looked at. */
export function sheetLines(garment: OpenGarment, width: number): readonly Line[] {
  const fit = fitShown(garment);
  if (!fit) return [];
  return sheetText(fit, buildSheet(fit), Math.min(width, readingWidth))
    .split("\n")
    .map((text) => line(text));
}

/** The best fit and one rival, drawn and in words. */
export function compareLines(
  garment: OpenGarment,
  rival: number,
  width: number,
  height: number,
  glyphs: Glyphs,
): readonly Line[] {
  const shown = garment.solving.shown;
  const other = shown?.rivals[rival - 1];
  if (!shown || !other) return [line("There is no rival any more.")];
  const half = Math.floor((width - 3) / 2);
  const wordsOf = differences(shown.fit, other).join(", ");
  const before = garment.solving.current ? "" : ", before the change";
  const words = [
    [`Best fit${before}: cost ${shown.fit.cost.toFixed(3)}`],
    [`Rival ${rival} of ${shown.rivals.length}: cost ${other.cost.toFixed(3)}`, ...wrap(wordsOf, half)],
  ];
  const most = Math.max(...words.map((lines) => lines.length));
  const column = (texts: readonly string[], fit: typeof other): readonly Line[] => [
    ...Array.from({ length: most }, (_, index) => line(texts[index] ?? "", index === 0 ? "strong" : "plain")),
    ...drawingPane(
      { ...garment, view: { ...garment.view, pane: "rules" } },
      fit,
      half,
      height - most,
      glyphs,
    ),
  ];
  return beside(
    [
      { lines: column(words[0]!, shown.fit), width: half },
      { lines: column(words[1]!, other), width: half },
    ],
    height,
    glyphs,
  );
}

/** What is asked, where something is. */
export function questionLines(
  screen: Screen,
  garment: OpenGarment | undefined,
  width: number,
): readonly Line[] {
  return question(screen, garment?.file ?? "", garment ? heldHere(garment).length : 0).flatMap((one) =>
    wrap(plainText(one), width, plainText(one).startsWith(" ") ? 9 : 0).map((text) =>
      line(text, one[0]?.style),
    ),
  );
}

function question(screen: Screen, file: string, held: number): readonly Line[] {
  switch (screen.kind) {
    case "ask quit":
      return [
        line("There are changes that are not saved.", "warning"),
        ...(held > 0
          ? [
              line(
                `${counted(held, "rule")} ${held === 1 ? "is" : "are"} held at one value; once you leave, what was allowed before is not known. To let all go first: Esc, then a.`,
              ),
            ]
          : []),
        line(""),
        line("  s    save them and leave"),
        line("  d    leave without them"),
        line("  Esc  stay"),
      ];
    case "ask unsaved":
      return [
        line(`Changes to ${file} from an earlier time were never saved.`, "warning"),
        ...(screen.unsaved.fileChanged ? [line("The file itself was changed since then.", "warning")] : []),
        line(""),
        line("  Enter  take them up again (they can be undone)"),
        line("  d      drop them and go on from the file"),
        line("  Esc    decide later: go on from the file and keep them until the next change"),
      ];
    case "ask conflict":
      return [
        line(`${file} was changed on disk since it was opened here. Nothing was written.`, "warning"),
        line(""),
        line("  m    write mine over what is on disk"),
        line("  t    take what is on disk (undo brings mine back)"),
        line("  Esc  neither for now"),
      ];
    default:
      return [];
  }
}
