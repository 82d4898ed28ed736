/** Two cables that mirror each other about the panel's centre, set off by ladders on both sides of each. */
export const mirroredCables = {
  kind: "cable",
  quantities: {
    width: { unit: "stitches", allow: "1..4", prefer: 2 },
    interval: { unit: "rows", allow: "2..12", prefer: 6 },
    // Needles from the centre to the ladder beside each cable.
    inside: { unit: "needles", allow: 2 },
  },
  // Two over two on every 4th row, three over three on every 6th: a knitting handbook's rule.
  rules: ["interval >= 2 * width"],
  lead: 0,
  repeat: "interval",
  cross: ["width", "width"],
  cables: {
    left: {
      over: "left",
      start: ["-(inside + width)", 0],
      repeat: [["-(inside + width)", "interval"]],
    },
    right: {
      over: "right",
      start: ["inside + width", 0],
      repeat: [["inside + width", "interval"]],
    },
  },
  ladders: ["-(inside + 2 * width + 1)", "-inside", "inside", "inside + 2 * width + 1"],
} as const;
