import { type Answers, given, mmOf } from "./answers.ts";
import { hasNeck, isTapered, stitchMm } from "./sizes.ts";

/** A height and the full width there, each as it is written. */
export interface WrittenStation {
  readonly height: string;
  readonly width: string;
}

/** The piece's outline from the cast-on edge upward. */
export function outlineOf(answers: Answers): readonly WrittenStation[] {
  const bottom = { height: "0 cm", width: given(answers, "width") };
  const height = given(answers, "height");
  if (!isTapered(answers)) return [bottom, { height, width: given(answers, "width") }];
  const width = given(answers, "top width");
  const isShort = mmOf(answers, "taper") < mmOf(answers, "height");
  return [bottom, ...(isShort ? [{ height: given(answers, "taper"), width }] : []), { height, width }];
}

/** The width of a neck at its lowest point, as a part of its width at the top: judgement, a shallow round neck. */
const lowestPart = 0.4;

/** The neck from its lowest point upward; empty where there is none. */
export function neckOf(answers: Answers): readonly WrittenStation[] {
  if (!hasNeck(answers)) return [];
  const lowestMm = Math.max(2 * stitchMm(answers), mmOf(answers, "neck width") * lowestPart);
  const startMm = mmOf(answers, "height") - mmOf(answers, "neck depth");
  return [
    {
      height: millimetreText(startMm),
      width: millimetreText(Math.min(lowestMm, mmOf(answers, "neck width"))),
    },
    { height: given(answers, "height"), width: given(answers, "neck width") },
  ];
}

/** In cm, to a hundredth of a millimetre. */
const millimetreText = (mm: number): string => `${Number((mm / 10).toFixed(3))} cm`;
