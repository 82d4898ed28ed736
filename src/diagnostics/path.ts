/** Keys and indexes from the top of the garment file down to a value. */
export type Path = readonly (string | number)[];
