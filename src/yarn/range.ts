/** A value that is known within bounds, all three in one unit. */
export interface Range {
  readonly least: number;
  readonly about: number;
  readonly most: number;
}

export const times = ({ least, about, most }: Range, factor: number): Range => ({
  least: least * factor,
  about: about * factor,
  most: most * factor,
});
