/** Three cords; the outer ones take turns to come over the one that is in the middle. */
export const braid = {
  kind: "cord",
  quantities: {
    interval: { unit: "rows", allow: "2..12", prefer: 4 },
    spread: { unit: "needles", allow: "2..20", prefer: 4 },
  },
  lead: 0,
  repeat: "2 * interval",
  strands: {
    left: {
      start: ["-spread", 0],
      repeat: [
        [1, "interval"],
        ["spread", "2 * interval"],
      ],
      next: "right",
    },
    middle: {
      start: [-1, 0],
      repeat: [
        ["-spread", "interval"],
        ["-spread", "2 * interval"],
      ],
      next: "left",
    },
    right: {
      start: ["spread", 0],
      repeat: [
        ["spread", "interval"],
        [-1, "2 * interval"],
      ],
      next: "middle",
    },
  },
  order: ["middle", "left", "right"],
} as const;
