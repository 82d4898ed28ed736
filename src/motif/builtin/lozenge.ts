/** Two arms of one cord that part and meet again on neighbouring needles, and never cross. */
export const lozenge = {
  kind: "cord",
  quantities: {
    interval: { unit: "rows", allow: "2..12", prefer: 4 },
    spread: { unit: "needles", allow: "2..20", prefer: 4 },
  },
  lead: 0,
  repeat: "2 * interval",
  strands: {
    left: {
      start: [-1, 0],
      repeat: [
        ["-spread", "interval"],
        [-1, "2 * interval"],
      ],
    },
    right: {
      start: [1, 0],
      repeat: [
        ["spread", "interval"],
        [1, "2 * interval"],
      ],
    },
  },
  folded: ["left", "right"],
  order: ["left", "right"],
} as const;

/** The same, but where they meet they change sides; the arm that comes from the right lies over. */
export const crossedLozenge = {
  ...lozenge,
  strands: {
    left: {
      start: [-1, 0],
      repeat: [
        ["-spread", "interval"],
        [1, "2 * interval"],
      ],
      next: "right",
    },
    right: {
      start: [1, 0],
      repeat: [
        ["spread", "interval"],
        [-1, "2 * interval"],
      ],
      next: "left",
    },
  },
} as const;
