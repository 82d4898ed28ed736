import type { SizeTable } from "../size-table.ts";
import { source } from "./source.ts";

/** Children's and youths' sizes, by age in years. */
export const child: SizeTable = {
  of: "child",
  source,
  sizes: ["2", "4", "6", "8", "10", "12", "14", "16"],
  rows: {
    chest: {
      inches: ["21", "23", "25", "26.5", "28", "30", "31.5", "32.5"],
      cm: ["53", "58.5", "63.5", "67", "71", "76", "80", "82.5"],
    },
    "back waist length": { inches: ["8.5", "9.5", "10.5", "12.5", "14", "15", "15.5", "16"] },
    "cross back": { inches: ["9.25", "9.75", "10.25", "10.75", "11.25", "12", "12.25", "13"] },
    "arm length to underarm": { inches: ["8.5", "10.5", "11.5", "12.5", "13.5", "15", "16", "16.5"] },
    "upper arm": { inches: ["7", "7.5", "8", "8.5", "8.75", "9", "9.25", "9.5"] },
    "armhole depth": { inches: ["4.25", "4.75", "5", "5.5", "6", "6.5", "7", "7.5"] },
    waist: { inches: ["21", "21.5", "22.5", "23.5", "24.5", "25", "26.5", "27.5"] },
    hips: { inches: ["22", "23.5", "25", "28", "29.5", "31.5", "33", "35.5"] },
    "centre back neck to wrist": { inches: ["18", "19.5", "20.5", "22", "24", "26", "27", "28"] },
  },
};
