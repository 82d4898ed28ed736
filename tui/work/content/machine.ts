import { counted } from "../../../src/report/words.ts";
import { wrap } from "../../../src/report/wrap.ts";
import { outlookOf } from "../../../src/work/outlook.ts";
import { hasMistakeAt, nextWords, noteAt, nowWords, placeWords } from "../../../src/work/place-text.ts";
import { currentPiece, type PieceWork } from "../../../src/work/record.ts";
import type { Glyphs } from "../../content/glyphs.ts";
import { blank, cell, fitHeight, type Line, line, lineWidth } from "../../content/line.ts";
import type { WorkState } from "../state.ts";
import { largeText } from "./large.ts";

interface Room {
  readonly width: number;
  readonly height: number;
  readonly glyphs: Glyphs;
}

/** What lies beside the bed: the row's number, the carriage's side, what to do now, what comes next. */
export function machineLines({ record }: WorkState, room: Room): readonly Line[] {
  const piece = currentPiece(record);
  const outlook = outlookOf(piece);
  const { width, height, glyphs } = room;
  const foot = [...nextLines(piece, width), progressLine(piece, width, glyphs)];
  const marks = markLines(piece, width);
  const place = line(cell(`${placeWords(piece)}, carriage at the ${outlook.now.carriage}`, width), "strong");
  const track = height >= 13 ? [trackLine(outlook.now.carriage, width, glyphs)] : [];
  const rest = foot.length + marks.length + track.length + 2;
  const inLarge = (numberHeight: number) =>
    largeNow(piece, { ...room, height: height - numberHeight - rest });
  const numbers = numberHeights.filter(({ from }) => height >= from);
  // The number gives way to what is to do: that is read from farther off, and the number stands in the line below too.
  const { tall } = numbers.find(({ tall }) => inLarge(tall) !== undefined) ?? numbers[0]!;
  const left = height - tall - rest;
  const now = inLarge(tall) ?? nowInWords(piece, { ...room, height: left });
  const spare = left - now.length;
  const above = tall > 0 && spare > 1 ? [blank] : [];
  return [
    ...above,
    ...(tall === 0 ? [] : numberBlock(piece, { ...room, height: tall })),
    place,
    ...track,
    ...fitHeight(now, Math.max(1, left - above.length)),
    ...marks,
    blank,
    ...foot,
  ].slice(-height);
}

/** Rows of the row's number, and the rows that must be there for it; 0 is no large number. */
const numberHeights = [
  { tall: 14, from: 36 },
  { tall: 7, from: 15 },
  { tall: 4, from: 13 },
  { tall: 0, from: 0 },
] as const;

/** The row's number in the middle, and beside it, on the side where the carriage rests, that side's name. */
function numberBlock(piece: PieceWork, { width, height, glyphs }: Room): readonly Line[] {
  const { now } = outlookOf(piece);
  const number = largeText([String(now.row)], Math.floor(width * 0.6), height, glyphs) ?? [
    line(String(now.row), "strong"),
  ];
  const wide = Math.max(...number.map(lineWidth));
  const side = Math.floor((width - wide) / 2);
  const word = largeText([now.carriage], side - 2, height, glyphs) ?? [
    line(now.carriage.toUpperCase(), "strong"),
  ];
  const wordWide = Math.max(...word.map(lineWidth));
  return Array.from({ length: height }, (_, index): Line => {
    const said = cell(textOf(word[index]), wordWide);
    const left = now.carriage === "left" ? cell(said, side) : " ".repeat(side);
    const right = now.carriage === "right" ? cell(said, width - side - wide, "right") : "";
    return [
      { text: left, style: "accent" },
      { text: cell(textOf(number[index]), wide), style: "strong" },
      { text: right, style: "accent" },
    ];
  });
}

const textOf = (spans: Line | undefined): string => (spans ?? blank).map(({ text }) => text).join("");

/** The bed as a line with the carriage at its end. */
function trackLine(carriage: "left" | "right", width: number, { level, drawing }: Glyphs): Line {
  const sign = drawing === "ascii" ? "[#]" : "▐█▌";
  const rail = level.repeat(Math.max(0, width - sign.length));
  return carriage === "left"
    ? [
        { text: sign, style: "accent" },
        { text: rail, style: "dim" },
      ]
    : [
        { text: rail, style: "dim" },
        { text: sign, style: "accent" },
      ];
}

/**
 * What to do now as large as fits: actions in brief, and below them the whole phrases in ordinary letters. Undefined
 * where there is no room.
 */
function largeNow(piece: PieceWork, { width, height, glyphs }: Room): readonly Line[] | undefined {
  const outlook = outlookOf(piece);
  const { briefs, phrases } = outlook.now;
  if (briefs.length === 0) return largeText(nowWords(outlook), width, height, glyphs);
  const whole = wrap(phrases.join("; "), width, 2).map((text) => line(text, "strong"));
  const large = largeText(briefs, width, height - whole.length, glyphs);
  if (!large) return undefined;
  return [...large, ...(large.length + whole.length < height ? [blank] : []), ...whole];
}

/** What to do now where large letters have no room: the words stand apart from all else. */
function nowInWords(piece: PieceWork, { width, height }: Room): readonly Line[] {
  const words = nowWords(outlookOf(piece));
  const lines = words.flatMap((phrase) => wrap(`  ${phrase}`, width, 4));
  const roomy = lines.length + words.length + 1 <= height;
  return [
    ...(words.length > 0 && lines.length + 1 <= height ? [line("Now", "dim")] : []),
    ...words.flatMap((phrase, index) => [
      ...(roomy && index > 0 ? [blank] : []),
      ...wrap(`  ${phrase}`, width, 4).map((text) => line(text, "strong")),
    ]),
  ];
}

function nextLines(piece: PieceWork, width: number): readonly Line[] {
  const outlook = outlookOf(piece);
  const words =
    outlook.now.phrases.length === 0 && outlook.next
      ? `Then: ${outlook.next.phrases.join("; ")}`
      : `Next ${nextWords(piece, outlook)}`;
  return fitHeight(
    wrap(words, width, 2).map((text) => line(text)),
    2,
  );
}

function progressLine(piece: PieceWork, width: number, { drawing }: Glyphs): Line {
  const { progress, rowsLeft } = outlookOf(piece);
  const [done, open] = drawing === "ascii" ? ["#", "."] : ["█", "░"];
  const words = ` ${counted(rowsLeft, "row")} left`;
  const wide = Math.max(0, width - words.length - 2);
  const filled = Math.floor(progress * wide);
  return [
    { text: `[${done.repeat(filled)}${open.repeat(wide - filled)}]`, style: "accent" },
    { text: words, style: "strong" },
  ];
}

function markLines(piece: PieceWork, width: number): readonly Line[] {
  const { now } = outlookOf(piece);
  const note = noteAt(piece, now);
  return [
    ...(hasMistakeAt(piece, now) ? [line("! a mistake is marked at this row", "warning")] : []),
    ...(note === undefined
      ? []
      : wrap(`Note: ${note}`, width, 6)
          .map((text) => line(text, "accent"))
          .slice(0, 2)),
  ];
}
