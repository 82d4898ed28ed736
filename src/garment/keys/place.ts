import { allowForms, type Section } from "./section.ts";

const preferForms = `${allowForms}; or { allow: ..., prefer: 3 }`;

/** Where the motifs lie, and how an allowed value is written. */
export const placeKeys = {
  limits: {
    where: "a cable's limits",
    keys: {
      stitches: { means: "most stitches crossed", form: "a whole number", otherwise: "common practice" },
      rows: { means: "fewest rows between crossings", form: "a whole number", otherwise: "common practice" },
    },
  },
  placement: {
    where: "a placement",
    keys: {
      motif: { means: "the motif", form: "a name" },
      on: { means: "the piece", form: "a name" },
      from: { means: "the mark to start from", form: "a name", otherwise: "cast-on" },
      to: { means: "the mark to end at", form: "a name", otherwise: "neck, else bind-off" },
      repeats: {
        means: "how often it is repeated upward",
        form: preferForms,
        otherwise: "any number from 1",
      },
      columns: { means: "panels side by side", form: preferForms, otherwise: "1" },
      gap: { means: "needles between two columns", form: preferForms, otherwise: "0" },
      margins: { means: "what stays free around the motif", form: "keys", otherwise: "anything from 0" },
      meet: {
        means: "where in its repeat the motif stands at a mark, or a list of such",
        form: "{ mark: underarm, at: whole }",
        otherwise: "anywhere",
      },
      mirror: {
        means: "whether the columns right of the centre are the mirror image of those left of it",
        form: "true or false",
        otherwise: "false",
      },
      unfinished: {
        means: "what is done above the last whole repeat: plain rows, or part of one more",
        form: "plain or part",
        otherwise: "plain",
      },
    },
  },
  meeting: {
    where: "a meeting",
    keys: {
      mark: { means: "the mark, between the placement's own two", form: "a name" },
      at: {
        means: "how far the motif is in its repeat there",
        form: "whole, half, or rows from its beginning",
      },
    },
  },
  match: {
    where: "a match",
    keys: {
      motif: { means: "the motif", form: "a name" },
      on: { means: "the pieces it runs on across", form: "a list of two or more names" },
      mark: { means: "the mark, which every one of them has", form: "a name" },
    },
  },
  margins: {
    where: "the margins",
    keys: {
      bottom: {
        means: "rows below the motif",
        form: `${allowForms}; or { least: 2 }`,
        otherwise: "any from 0",
      },
      top: { means: "rows above the motif", form: `${allowForms}; or { least: 2 }`, otherwise: "any from 0" },
      side: {
        means: "needles at both sides of a panel in the centre",
        form: "5 or { least: 5 }",
        otherwise: "0",
      },
      left: { means: "needles at the left", form: `${allowForms}; or { least: 2 }`, otherwise: "as side" },
      right: { means: "needles at the right", form: `${allowForms}; or { least: 2 }`, otherwise: "as side" },
    },
  },
  preference: {
    where: "an allowed value",
    keys: {
      allow: { means: "what it may be", form: allowForms },
      prefer: { means: "what it should rather be", form: "a number", otherwise: "no preference" },
    },
  },
  range: {
    where: "a range",
    keys: {
      from: { means: "the least value", form: "a whole number" },
      to: { means: "the greatest value", form: "a whole number" },
      step: { means: "from one value to the next", form: "a whole number", otherwise: "1" },
    },
  },
  "open range": {
    where: "a margin",
    keys: { least: { means: "the least value", form: "a whole number" } },
  },
} as const satisfies Readonly<Record<string, Section>>;
