import type { SizeTable } from "../size-table.ts";
import { source } from "./source.ts";

/** 2X to 5X were seen in part only. */
export const man: SizeTable = {
  of: "man",
  source,
  sizes: ["S", "M", "L", "XL", "2X", "3X", "4X", "5X"],
  rows: {
    chest: {
      inches: ["34-36", "38-40", "42-44", "46-48", "50-52", "54-56", "58-60", "62-64"],
      cm: ["86-91.5", "96.5-101.5", "106.5-111.5", "116.5-122", null, null, null, null],
    },
    "back hip length": {
      inches: ["23-24", "25-26", "26-27", "28", "29", "30", "30", null],
      cm: ["58.5-61", null, null, "71", null, null, null, null],
    },
    "cross back": { inches: ["15.5-16", "16.5-17", "17.5-18", "18-18.5", null, null, null, null] },
    "arm length to underarm": {
      inches: ["18", "18.5", "19.5", "20", null, null, null, null],
      cm: ["45.5", "47", "49.5", "50.5", null, null, null, null],
    },
    "upper arm": {
      inches: ["12", "13", "15", "15.5", null, null, null, null],
      cm: ["30.5", "33", "38", "39.5", null, null, null, null],
    },
    "armhole depth": { inches: ["8.5-9", "9-9.5", "9.5-10", "10-10.5", null, null, null, null] },
    waist: { inches: ["28-30", "32-34", "36-38", "42-44", null, null, null, null] },
    hips: { inches: ["35-37", "39-41", "43-45", "47-49", null, null, null, null] },
    "centre back neck to wrist": {
      inches: ["32-32.5", "33-33.5", "34-34.5", "35-35.5", null, null, null, null],
    },
  },
};
