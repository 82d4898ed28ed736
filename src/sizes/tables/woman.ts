import type { SizeTable } from "../size-table.ts";
import { source } from "./source.ts";

const mayDiffer = "the council's current table may differ from it by up to 1 in (2.5 cm)";

/** 2X to 5X were seen in part only. */
export const woman: SizeTable = {
  of: "woman",
  source,
  sizes: ["XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X"],
  rows: {
    chest: {
      inches: ["28-30", "32-34", "36-38", "40-42", "44-46", "48-50", "52-54", "56-58", "60-62"],
      cm: ["71-76", "81-86", "91.5-96.5", "101.5-106.5", "111.5-117", null, null, null, null],
      fromMemory: ["2X", "3X", "4X", "5X"],
    },
    "back waist length": {
      inches: ["16.5", "17", "17.25", "17.5", "17.75", null, null, null, null],
      cm: ["42", "43", "43.5", "44.5", "45", null, null, null, null],
    },
    "cross back": {
      inches: ["14-14.5", "14.5-15", "15.5-16", "16.5-17", "17.5", null, null, null, null],
      uncertain: mayDiffer,
    },
    "arm length to underarm": {
      inches: ["16.5", "17", "17", "17.5", "17.5", null, null, null, null],
      cm: ["42", "43", "43", "44.5", "44.5", null, null, null, null],
    },
    "upper arm": {
      inches: ["9.75", "10.25", "11", "12", "13.5", null, null, null, null],
      cm: ["25", "26", "28", "30.5", "34.5", null, null, null, null],
    },
    "armhole depth": { inches: ["6-6.5", "6.5-7", "7-7.5", "7.5-8", "8-8.5", null, null, null, null] },
    waist: { inches: ["23-24", "25-26.5", "28-30", "32-34", "36-38", null, null, null, "49-50"] },
    hips: { inches: ["33-34", "35-36", "38-40", "42-44", "46-48", "52-53", "54-55", "56-57", "61-62"] },
    "centre back neck to wrist": {
      inches: [
        ...["26-26.5", "27-27.5", "28-28.5", "29-29.5", "29-29.5"],
        ...["30-30.5", "30.5-31", "31.5-32", "31.5-32"],
      ],
      uncertain: mayDiffer,
    },
  },
};
