import type { SizeTable } from "../size-table.ts";
import { source } from "./source.ts";

export const baby: SizeTable = {
  of: "baby",
  source,
  sizes: ["3 months", "6 months", "12 months", "18 months", "24 months"],
  rows: {
    chest: { inches: ["16", "17", "18", "19", "20"], cm: ["40.5", "43", "45.5", "48", "50.5"] },
    "back waist length": {
      inches: ["6", "7", "7.5", "8", "8.5"],
      cm: ["15.5", "17.5", "19", "20.5", "21.5"],
    },
    "cross back": {
      inches: ["7.25", "7.75", "8.25", "8.5", "8.75"],
      cm: ["18.5", "19.5", "21", "21.5", "22"],
    },
    "arm length to underarm": {
      inches: ["6", "6.5", "7.5", "8", "8.5"],
      cm: ["15.5", "16.5", "19", "20.5", "21.5"],
    },
    "upper arm": { inches: ["5.5", "6", "6.5", "7", "7.5"], cm: ["14", "15.5", "16.5", "17.5", "19"] },
    "armhole depth": { inches: ["3.25", "3.5", "3.75", "4", "4.25"], cm: ["8.5", "9", "9.5", "10", "10.5"] },
    waist: { inches: ["18", "19", "20", "20.5", "21"] },
    hips: { inches: ["19", "20", "20", "21", "22"] },
    "centre back neck to wrist": {
      inches: ["10.5", "11.5", "12.5", "14", "18"],
      cm: ["26.5", "29", "31.5", "35.5", "45.5"],
    },
  },
};
