/**
 * Stitches that change places every `interval` rows.
 *
 * From 4 to 12 rows between crossings, 6 preferred: a crossing of two stitches over two is worked on every 4th
 * row and one of three over three on every 6th to 8th by the published hand and bed rules; twelve is judgement.
 */
export const transferredCable = {
  kind: "cable",
  quantities: {
    interval: { unit: "rows", allow: "4..12", prefer: 6 },
    // May be negative: it is a place on the bed, not a distance.
    offset: { unit: "needles", allow: 0, signed: true },
  },
  cross: [2, 2],
  over: "left",
  "draw-in": "0 %",
  lead: 0,
  repeat: "interval",
  crossings: {
    start: ["offset", 0],
    repeat: [["offset", "interval"]],
  },
} as const;
