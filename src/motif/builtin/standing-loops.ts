/**
 * A cord up the middle that stands off in a loop at the left and at the right in turn. Six to ten cord stitches a loop
 * is what a machine-knitting blog works for free loops of cord; twelve is judgement.
 */
export const standingLoops = {
  kind: "cord",
  quantities: {
    interval: { unit: "rows", allow: "4..16", prefer: 8 },
    loop: { unit: "stitches", allow: "6..12", prefer: 10 },
  },
  lead: 0,
  repeat: "2 * interval",
  strands: {
    cord: {
      start: [-1, 0],
      repeat: [
        [-1, 2, { count: "loop" }],
        [1, "interval"],
        [1, "interval + 2", { count: "loop" }],
        [-1, "2 * interval"],
      ],
    },
  },
} as const;
