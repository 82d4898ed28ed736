import type { Question } from "./question.ts";
import { machineQuestions } from "./questions/machine.ts";
import { ornamentQuestions } from "./questions/ornament.ts";
import { pieceQuestions } from "./questions/piece.ts";
import { placeQuestions } from "./questions/place.ts";
import { swatchQuestions } from "./questions/swatch.ts";
import { yarnQuestions } from "./questions/yarn.ts";

/** Everything that is asked for a new garment, in order; each question may build on the answers before it. */
export const QUESTIONS: readonly Question[] = [
  ...swatchQuestions,
  ...machineQuestions,
  ...ornamentQuestions,
  ...pieceQuestions,
  ...placeQuestions,
  ...yarnQuestions,
];
