import type { Garment } from "../garment/garment.ts";
import type { CommandInput } from "./command.ts";

/** The garment as the command line asks for it: with --steady it has to hold for every gauge, as steady: true says. */
export const asAsked = <Loaded extends { readonly garment: Garment }>(
  loaded: Loaded,
  { steady }: CommandInput["options"],
): Loaded => (steady === true ? { ...loaded, garment: { ...loaded.garment, steady: 1 } } : loaded);
