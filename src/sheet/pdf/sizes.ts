/** Sizes of type on the sheet in points, large enough for bad light. */
export const sizes = {
  title: 24,
  heading: 18,
  blockHeading: 15,
  text: 13.5,
  figures: 12.5,
  row: 20,
  small: 10,
  running: 11,
  margin: 10.5,
} as const;
