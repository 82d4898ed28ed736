/** One key of the garment file. */
interface KeyDescription {
  /** What the key says. */
  readonly means: string;
  /** How its value is written. */
  readonly form: string;
  /** What holds where the key is not written; a key without one must be written. */
  readonly otherwise?: string;
}

interface Section {
  /** Where the keys stand, as in "height belongs to ..." */
  readonly where: string;
  readonly keys: Readonly<Record<string, KeyDescription>>;
}

const allowForms = "4, [2, 4, 6], 2..9 or { from: 2, to: 10, step: 2 }";
const preferForms = `${allowForms}; or { allow: ..., prefer: 3 }`;
const drawnOutlineKeys = {
  centre: {
    means: "where the centre line lies, from the left end of the cast-on edge",
    form: "a length",
    otherwise: "the middle of the cast-on edge",
  },
  turn: { means: "how far the drawing is turned, clockwise", form: "90, 180 or 270", otherwise: "0" },
};
const anchorForm = "[needle, row]";

/**
 * Every key that a garment file may have, by the place where it may stand. The reader refuses what is not here, and
 * the names of pieces, marks, motifs, strands and quantities are the knitter's own.
 */
export const SECTIONS = {
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
  bed: {
    where: "the bed",
    keys: {
      needles: { means: "needles on the bed, both sides together", form: "a whole number" },
      pitch: { means: "from one needle to the next", form: "a length", otherwise: "not known" },
      carriage: {
        means: "where the carriage rests before the first row",
        form: "left or right",
        otherwise: "right",
      },
    },
  },
  gauge: {
    where: "the gauge",
    keys: {
      ground: { means: "the plain cloth", form: "keys" },
      cord: { means: "the cord", form: "keys", otherwise: "not known, and then no cord can be laid" },
    },
  },
  "ground gauge": {
    where: "the ground's gauge",
    keys: {
      stitches: { means: "stitches counted", form: "a number" },
      rows: { means: "rows counted", form: "a number" },
      over: { means: "what they were counted over", form: "a length" },
      "rows over": {
        means: "what the rows were counted over, where that is another length",
        form: "a length",
        otherwise: "the same as over",
      },
      within: {
        means: "how far off the gauge may be",
        form: "a percentage",
        otherwise: "a quarter stitch or row of the count",
      },
    },
  },
  "cord gauge": {
    where: "the cord's gauge",
    keys: {
      needles: { means: "needles the cord is knitted on", form: "a whole number, usually 3 to 5" },
      stitches: { means: "cord stitches counted", form: "a number" },
      over: { means: "what they were counted over", form: "a length" },
      within: {
        means: "how far off the gauge may be",
        form: "a percentage",
        otherwise: "a quarter cord stitch of the count",
      },
      thickness: {
        means: "how thick the cord is, where one strand climbs over another",
        form: "a length",
        otherwise: "not counted",
      },
    },
  },
  yarns: {
    where: "the yarn",
    keys: {
      ground: { means: "the yarn of the plain cloth", form: "keys", otherwise: "not known" },
      cord: { means: "the yarn of the cord", form: "keys", otherwise: "not known" },
    },
  },
  yarn: {
    where: "a yarn",
    keys: {
      tex: { means: "grams of 1000 m", form: "a number", otherwise: "not known; then swatch" },
      swatch: { means: "a swatch that was weighed", form: "keys", otherwise: "not known; then tex" },
    },
  },
  "ground swatch": {
    where: "the ground's weighed swatch",
    keys: {
      stitches: { means: "stitches of the whole swatch", form: "a whole number" },
      rows: { means: "rows of the whole swatch", form: "a whole number" },
      weight: { means: "what it weighs, tails and waste yarn cut off", form: "a weight: g, kg or oz" },
    },
  },
  "cord swatch": {
    where: "the cord's weighed swatch",
    keys: {
      stitches: { means: "cord stitches of the whole piece of cord", form: "a whole number" },
      weight: { means: "what it weighs, tails cut off", form: "a weight: g, kg or oz" },
    },
  },
  "on hand": {
    where: "what is on hand",
    keys: {
      cord: { means: "finished cord", form: "a length", otherwise: "as much as it takes" },
      "cord yarn": {
        means: "yarn for the cord, its tails included",
        form: "a weight, a length, or { balls: 2, each: 50 g }",
        otherwise: "as much as it takes",
      },
      "ground yarn": {
        means: "yarn for the plain cloth, waste included",
        form: "a weight, a length, or { balls: 6, each: 50 g }",
        otherwise: "as much as it takes",
      },
      yarn: {
        means: "one yarn for both cloth and cord, in place of the two",
        form: "a weight, a length, or { balls: 8, each: 50 g }",
        otherwise: "as much as it takes",
      },
      prefer: {
        means: "that as little as can be is left over",
        form: "least waste",
        otherwise: "no preference",
      },
    },
  },
  balls: {
    where: "balls of yarn",
    keys: {
      balls: { means: "how many there are", form: "a number, such as 6 or 5.5" },
      each: { means: "what one of them is", form: "a weight or a length" },
    },
  },
  wearer: {
    where: "the wearer",
    keys: {
      age: { means: "age in years", form: "5, 5 years or 18 months", otherwise: "not known" },
      height: { means: "height of the body", form: "a length", otherwise: "not known" },
    },
  },
  piece: {
    where: "a piece",
    keys: {
      outline: {
        means: "heights and widths from the cast-on edge upward, or where they are drawn",
        form: "a list of heights, or { svg: front.svg, id: front }",
      },
      shape: {
        means: "the shape it has, with measurements or a size, in place of an outline",
        form: "{ like: body front, size: woman M, ease: standard }",
        otherwise: "outline",
      },
      make: {
        means: "how many of this piece are knitted, all alike",
        form: "a whole number",
        otherwise: "1",
      },
      marks: { means: "named heights", form: "a length under each name", otherwise: "cast-on and bind-off" },
      neck: {
        means: "the opening cut out around the centre, upward",
        form: "a list of heights",
        otherwise: "none",
      },
      grow: { means: "how much longer the piece may become", form: "a length", otherwise: "0 cm" },
      shrink: { means: "how much shorter the piece may become", form: "a length", otherwise: "0 cm" },
      carriage: {
        means: "where the carriage rests before the first row",
        form: "left or right",
        otherwise: "as the bed says",
      },
      shaping: {
        means: "the rows on which single stitches are added or taken away",
        form: "any row or even rows",
        otherwise: "any row",
      },
      part: {
        means: "where on the body it lies",
        form: "hood, collar, front, back, sleeve or other",
        otherwise: "as its name says, else other",
      },
    },
  },
  "svg outline": {
    where: "an outline from an SVG drawing",
    keys: {
      svg: { means: "the drawing", form: "a file beside the garment's" },
      id: { means: "the line's id in the drawing", form: "a name", otherwise: "the only line there is" },
      ...drawnOutlineKeys,
    },
  },
  "dxf outline": {
    where: "an outline from a DXF pattern",
    keys: {
      dxf: { means: "the pattern", form: "a file beside the garment's" },
      piece: {
        means: "the piece's name in the pattern",
        form: "a name",
        otherwise: "the only piece there is",
      },
      size: { means: "the size, where the pattern has several", form: "a name", otherwise: "the only one" },
      ...drawnOutlineKeys,
    },
  },
  shape: {
    where: "a shape",
    keys: {
      like: { means: "which shape it is", form: "a name, such as body front" },
      size: {
        means: "the size whose body measurements are taken",
        form: "woman M, man L, child 6, baby 12 months",
        otherwise: "none, and then the measurements are written",
      },
    },
  },
  station: {
    where: "a height of an outline",
    keys: {
      height: { means: "height above the cast-on edge", form: "a length" },
      width: {
        means: "full width, the same on both sides of the centre",
        form: "a length",
        otherwise: "left and right",
      },
      left: { means: "width left of the centre", form: "a length", otherwise: "half of width" },
      right: { means: "width right of the centre", form: "a length", otherwise: "half of width" },
    },
  },
  "neck station": {
    where: "a height of a neck",
    keys: {
      height: { means: "height above the cast-on edge", form: "a length" },
      width: { means: "width of the opening", form: "a length" },
    },
  },
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

export type SectionName = keyof typeof SECTIONS;

/** The keys that may stand in one place. */
export const keysOf = (section: SectionName): readonly string[] => Object.keys(SECTIONS[section].keys);

/** Where a key may stand, for one that was written in the wrong place. */
export function homeOf(key: string): string | undefined {
  const homes = Object.values(SECTIONS).filter(({ keys }) => Object.hasOwn(keys, key));
  return homes.length === 1 || homes.length === 2 ? homes.map(({ where }) => where).join(" or ") : undefined;
}
