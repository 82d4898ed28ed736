import type { Section } from "./section.ts";

/** The top of the file, and each size of it. */
export const fileKeys = {
  garment: {
    where: "the top of the file",
    keys: {
      format: { means: "the format of the file", form: "evenrow/1" },
      title: { means: "what the garment is called", form: "text", otherwise: "the file's name" },
      bed: { means: "the machine's row of needles", form: "keys" },
      gauge: { means: "what was counted and measured on the swatch, washed and rested", form: "keys" },
      steady: {
        means:
          "whether ease and length have to keep their limits for every gauge that the swatch leaves possible",
        form: "true, false or the share of that range, such as 70 %",
        otherwise: "false",
      },
      yarn: { means: "the yarns", form: "keys", otherwise: "not known" },
      "on hand": {
        means: "what there is of cord and yarn, which all pieces together may not exceed",
        form: "keys",
        otherwise: "as much as it takes",
      },
      wearer: {
        means: "who will wear it; for a child this turns on the rules about cords",
        form: "{ age: 5, height: 110 cm }, or one of the two",
        otherwise: "not known, and then cords are warned of",
      },
      pieces: { means: "the pieces, by name", form: "a piece under each name" },
      sizes: {
        means: "the sizes, in the order of the pattern, each with what differs from what is said for all",
        form: "keys under each size's name",
        otherwise: "one size",
      },
      share: {
        means: "what is alike in every size: quantities of the motifs, and pickup for the counts of the cord",
        form: "a list such as [interval, spread, pickup]",
        otherwise: "nothing: each size has the look that suits it best",
      },
      motifs: {
        means: "the motifs, by name",
        form: "a motif under each name",
        otherwise: "the built-in ones",
      },
      place: { means: "which motif lies on which piece, and where", form: "a list of placements" },
      match: {
        means: "motifs that stand alike at a mark of several pieces, to run on across their seam",
        form: "a list such as - { motif: plait, on: [front, back], mark: underarm }",
        otherwise: "none",
      },
      weights: {
        means: "what one unit of each term costs",
        form: "a number under each term",
        otherwise: "the default weights",
      },
    },
  },
  size: {
    where: "a size",
    keys: {
      size: {
        means: "the body's size in every shape of the file",
        form: "the name of a size, such as woman M",
        otherwise: "what the shapes say themselves",
      },
      pieces: {
        means: "what differs on the pieces of this size",
        form: "keys of a piece under its name",
        otherwise: "the pieces as they stand",
      },
      wearer: {
        means: "who wears this size",
        form: "{ age: 5, height: 110 cm }, or one of the two",
        otherwise: "the wearer said for all",
      },
    },
  },
} as const satisfies Readonly<Record<string, Section>>;
