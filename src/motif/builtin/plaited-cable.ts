/** Three groups of stitches; the outer ones take turns to cross over the one in the middle. */
export const plaitedCable = {
  kind: "cable",
  quantities: {
    width: { unit: "stitches", allow: [2, 4], prefer: 2 },
    interval: { unit: "rows", allow: "2..12", prefer: 4 },
  },
  rules: ["interval >= 2 * width"],
  lead: 0,
  repeat: "2 * interval",
  cross: ["width", "width"],
  crossings: {
    start: ["-width / 2", 0, { over: "left" }],
    repeat: [
      ["width / 2", "interval", { over: "right" }],
      ["-width / 2", "2 * interval", { over: "left" }],
    ],
  },
} as const;
