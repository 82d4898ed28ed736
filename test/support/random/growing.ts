import type fc from "fast-check";
import type { GarmentFile } from "../garment-file.ts";
import type { GrowingEntry } from "../referee/growing.ts";
import { type Dice, thrown } from "./dice.ts";

/** A garment whose one motif may follow the taper of its one piece. */
export interface GrowingGarment {
  readonly garment: GarmentFile;
  readonly motif: GrowingEntry;
}

/** Small tapering pieces, narrowing or widening, about three of four of which hold the motif. */
export const growingArbitrary = (): fc.Arbitrary<GrowingGarment> => thrown(growing);

function growing(dice: Dice): GrowingGarment {
  const most = dice.whole(4, 7);
  const least = Math.max(2, most - dice.whole(1, 3));
  const motif: GrowingEntry = {
    like: "crossed cord",
    interval: dice.pick([
      { allow: [4] },
      { allow: [3, 4], prefer: 4 },
      { allow: [4, 5], prefer: dice.whole(3, 6) },
    ]),
    spread: { allow: `${least}..${most}`, prefer: dice.whole(least, most), change: dice.whole(1, 2) },
    ...(dice.chance(60) && { ease: { from: "-12 %", to: "18 %", prefer: `${dice.whole(-3, 6)} %` } }),
  };
  const heightCm = dice.whole(10, 16);
  const [narrowCm, wideCm] = [dice.whole(5, 8), dice.whole(7, 12)];
  const widths = dice.chance(70) ? [narrowCm, wideCm] : [wideCm, narrowCm];
  const weights = {
    ease: dice.whole(1, 20) / 10,
    spread: dice.whole(1, 30) / 10,
    balance: dice.whole(0, 10) / 10,
  };
  return {
    motif,
    garment: {
      format: "evenrow/1",
      bed: { needles: 120 },
      gauge: {
        ground: { stitches: dice.whole(20, 26), rows: dice.whole(28, 36), over: "10 cm" },
        cord: { needles: 3, stitches: dice.whole(18, 26), over: "10 cm" },
      },
      pieces: {
        sleeve: {
          outline: [
            { height: "0 cm", width: `${widths[0]} cm` },
            { height: `${heightCm} cm`, width: `${widths[1]} cm` },
          ],
          ...(dice.chance(50) && { grow: "6 mm", shrink: "6 mm" }),
        },
      },
      motifs: { plait: motif },
      place: [
        {
          motif: "plait",
          on: "sleeve",
          from: "cast-on",
          to: "bind-off",
          repeats: { allow: "2..5", ...(dice.chance(40) && { prefer: dice.whole(2, 5) }) },
          margins: {
            bottom: `0..${dice.whole(4, 20)}`,
            top: `0..${dice.whole(4, 20)}`,
            side: { least: dice.whole(0, 4) },
          },
        },
      ],
      ...(dice.chance(60) && { weights }),
    },
  };
}
