/** Two arms of one cord that change sides at every hanging. Written as a knitter would write it in a file. */
export const crossedCord = {
  kind: "cord",
  quantities: {
    interval: { unit: "rows", allow: "2..12", prefer: 4 },
    spread: { unit: "needles", allow: "2..20", prefer: 3 },
  },
  lead: "interval",
  repeat: "2 * interval",
  strands: {
    left: {
      start: [-1, 0],
      "lead-in": [["-spread", "interval"]],
      repeat: [
        ["spread", "interval"],
        ["-spread", "2 * interval"],
      ],
    },
    right: {
      start: [1, 0],
      "lead-in": [["spread", "interval"]],
      repeat: [
        ["-spread", "interval"],
        ["spread", "2 * interval"],
      ],
    },
  },
  folded: ["left", "right"],
  order: ["left", "right"],
} as const;
