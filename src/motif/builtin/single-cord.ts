/** One cord that swings from side to side. */
export const singleCord = {
  kind: "cord",
  quantities: {
    interval: { unit: "rows", allow: "2..12", prefer: 4 },
    spread: { unit: "needles", allow: "2..20", prefer: 4 },
  },
  lead: "interval",
  repeat: "2 * interval",
  strands: {
    cord: {
      start: [1, 0],
      "lead-in": [["-spread", "interval"]],
      repeat: [
        ["spread", "interval"],
        ["-spread", "2 * interval"],
      ],
    },
  },
} as const;
