/** The head of a garment file: stitches of 3 mm, rows of 4 mm and cord stitches of 5 mm, so that paths are whole numbers. */
export const threeByFour = {
  format: "evenrow/1",
  bed: { needles: 100 },
  gauge: {
    ground: { stitches: 20, rows: 15, over: "6 cm" },
    cord: { needles: 3, stitches: 12, over: "6 cm" },
  },
} as const;
