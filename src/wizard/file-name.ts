import { type Answers, given } from "./answers.ts";

const longestName = 40;

/** A file's name made from the garment's title: letters, digits and `-`. */
export function fileNameFor(answers: Answers): string {
  const plain = given(answers, "title")
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .slice(0, longestName)
    .replace(/^-+|-+$/g, "");
  return `${plain === "" ? "garment" : plain}.yaml`;
}
