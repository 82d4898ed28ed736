import { allowForms, type Section } from "./section.ts";

const anchorForm = "[needle, row]";

/** The motifs. */
export const motifKeys = {
  motif: {
    where: "a motif",
    keys: {
      like: {
        means: "the built-in motif that it is made from",
        form: "a name",
        otherwise: "the motif is written out in full",
      },
      kind: { means: "what it is made of", form: "cord, cable or band" },
      quantities: {
        means: "what the fit may choose",
        form: "a quantity under each name",
        otherwise: "nothing to choose",
      },
      lead: {
        means: "rows worked once before the first repeat; a band may leave it out",
        form: "a number or a sum",
      },
      repeat: { means: "rows of one repeat", form: "a number or a sum" },
      rules: {
        means: "comparisons that must hold between the quantities",
        form: "a list of texts such as spread <= interval + 2",
        otherwise: "none",
      },
    },
  },
  cord: {
    where: "a motif of the kind cord",
    keys: {
      strands: { means: "running lengths of cord", form: "a strand under each name" },
      folded: {
        means: "two strands that are the arms of one cord, or several such pairs",
        form: "[left, right]",
        otherwise: "none",
      },
      order: {
        means: "order of work in a row; a later strand lies over an earlier one",
        form: "a list of all strands",
        otherwise: "as they are written",
      },
      ease: {
        means: "how much longer than its path the cord is",
        form: "{ from, to, prefer }",
        otherwise: "-5 % to 15 %, 2 % preferred",
      },
      reserve: { means: "spare cord", form: "a percentage", otherwise: "15 %" },
      marker: {
        means: "cord stitches from one thread, laid in to make counting easy, to the next",
        form: "a whole number",
        otherwise: "10",
      },
    },
  },
  cable: {
    where: "a motif of the kind cable",
    keys: {
      cross: { means: "stitches left and right that change places", form: "[2, 2]" },
      crossings: {
        means: "where the stitches cross",
        form: "{ start, lead-in, repeat }",
        otherwise: "as cables says",
      },
      cables: {
        means: "several cables side by side, by name",
        form: "a cable under each name",
        otherwise: "the one of crossings",
      },
      ladders: {
        means: "needles from the panel's centre that stand out of work",
        form: "[-5, 5]",
        otherwise: "none",
      },
      over: { means: "which group lies on top, as worn", form: "left or right", otherwise: "left" },
      "draw-in": {
        means: "how much narrower the crossed stitches become",
        form: "a percentage",
        otherwise: "0 %",
      },
      limits: {
        means: "where warnings start",
        form: "{ stitches: 6, rows: 4 }",
        otherwise: "common practice for the bed",
      },
    },
  },
  "one cable": {
    where: "one of several cables",
    keys: {
      cross: {
        means: "stitches left and right that change places",
        form: "[2, 2]",
        otherwise: "as the motif says",
      },
      over: {
        means: "which group lies on top, as worn",
        form: "left or right",
        otherwise: "as the motif says, else left",
      },
      start: { means: "the first crossing's middle and row", form: "[middle, row]" },
      "lead-in": {
        means: "crossings before the first repeat",
        form: "[[middle, row], ...]",
        otherwise: "none",
      },
      repeat: { means: "crossings of one repeat", form: "[[middle, row], ...]" },
    },
  },
  band: {
    where: "a motif of the kind band",
    keys: {
      stitches: { means: "stitches of one repeat", form: "a number or a sum" },
      edge: {
        means: "stitches at the left and the right end that belong to no repeat",
        form: "[1, 1]",
        otherwise: "[0, 0]",
      },
      card: {
        means: "stitches of the card that holds the pattern",
        form: "a whole number, usually 24",
        otherwise: "no card",
      },
      colours: {
        means: "colours of the pattern; two or more need an even number of rows",
        form: "a whole number",
        otherwise: "1",
      },
    },
  },
  quantity: {
    where: "a quantity",
    keys: {
      allow: { means: "what it may be", form: allowForms },
      prefer: { means: "what it should rather be", form: "a number", otherwise: "no preference" },
      unit: { means: "what it counts", form: "rows, needles, stitches or strands" },
      change: {
        means: "most by which it may change from one repeat to the next, to follow a piece that tapers",
        form: "a whole number",
        otherwise: "it stays as it is",
      },
      signed: {
        means: "whether it may be negative: a place left of the centre",
        form: "true or false",
        otherwise: "false",
      },
    },
  },
  strand: {
    where: "a strand",
    keys: {
      start: { means: "the first hanging", form: anchorForm },
      "lead-in": {
        means: "hangings before the first repeat",
        form: `[${anchorForm}, ...]`,
        otherwise: "none",
      },
      repeat: { means: "hangings of one repeat", form: `[${anchorForm}, ...]` },
      each: {
        means: "several strands in one: a name for their number, and the numbers",
        form: "{ i: 1..4 }",
        otherwise: "one strand",
      },
      next: {
        means: "the strand whose place it takes for the next repeat",
        form: "a strand's name, or with each the number of one of them",
        otherwise: "its own",
      },
    },
  },
  hanging: {
    where: "a hanging",
    keys: {
      count: {
        means: "cord stitches that stand off as a loop before this hanging",
        form: "a number or a sum",
        otherwise: "as the ease asks",
      },
      turn: {
        means: "place in the row's order of work; a later one lies over",
        form: "a number or a sum",
        otherwise: "0, and then the motif's order",
      },
    },
  },
  crossings: {
    where: "the crossings",
    keys: {
      start: { means: "the first crossing's middle and row", form: "[middle, row]" },
      "lead-in": {
        means: "crossings before the first repeat",
        form: "[[middle, row], ...]",
        otherwise: "none",
      },
      repeat: { means: "crossings of one repeat", form: "[[middle, row], ...]" },
    },
  },
  crossing: {
    where: "a crossing",
    keys: {
      over: {
        means: "which group lies on top in this crossing",
        form: "left or right",
        otherwise: "as the cable's",
      },
    },
  },
  ease: {
    where: "the ease",
    keys: {
      from: { means: "the least ease", form: "a percentage", otherwise: "-5 %" },
      to: { means: "the greatest ease", form: "a percentage", otherwise: "15 %" },
      prefer: { means: "what it should rather be", form: "a percentage", otherwise: "2 %" },
    },
  },
} as const satisfies Readonly<Record<string, Section>>;
