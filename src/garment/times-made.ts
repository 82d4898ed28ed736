import type { Garment } from "./garment.ts";

/** How many of a piece are knitted. */
export const timesMade = ({ pieces }: Pick<Garment, "pieces">, piece: string): number =>
  pieces.find(({ name }) => name === piece)?.make ?? 1;
