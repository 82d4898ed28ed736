/**
 * Cords that cross their neighbours in turn, over one and under the next. A lane is a place across the lattice, the
 * lanes lie `apart` needles from each other, and at either edge a cord rests for one interval before it turns back.
 */
export const lattice = {
  kind: "cord",
  quantities: {
    cords: { unit: "strands", allow: 4 },
    interval: { unit: "rows", allow: "2..12", prefer: 6 },
    apart: { unit: "needles", allow: "2..12", prefer: 4 },
  },
  lead: 0,
  repeat: "2 * interval",
  strands: {
    cord: {
      each: { i: "1..cords" },
      start: ["needle(apart * min(2 * i - 1, 2 * cords - 2 * i + 2) - floor(apart * (cords + 1) / 2))", 0],
      repeat: [
        [
          "needle(apart * min(2 * i, 2 * cords - 2 * i + 1) - floor(apart * (cords + 1) / 2))",
          "interval",
          // Those on their way to the right come first in the numbers and lie over.
          { turn: "-i" },
        ],
        [
          "needle(apart * max(1, min(2 * i + 1, 2 * cords - 2 * i)) - floor(apart * (cords + 1) / 2))",
          "2 * interval",
          { turn: "i" },
        ],
      ],
      next: "mod(i, cords) + 1",
    },
  },
} as const;
