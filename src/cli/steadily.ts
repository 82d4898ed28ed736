import type { Garment, SizeRange } from "../garment/garment.ts";
import type { CommandInput } from "./command.ts";

/** The garment as the command line asks for it: with --steady it has to hold for every gauge, as steady: true says. */
export const asAsked = <Loaded extends { readonly garment: Garment; readonly range?: SizeRange }>(
  loaded: Loaded,
  { steady }: CommandInput["options"],
): Loaded =>
  steady === true
    ? {
        ...loaded,
        garment: steadily(loaded.garment),
        ...(loaded.range && {
          range: {
            ...loaded.range,
            sizes: loaded.range.sizes.map((size) => ({ ...size, garment: steadily(size.garment) })),
          },
        }),
      }
    : loaded;

const steadily = (garment: Garment): Garment => ({ ...garment, steady: 1 });
