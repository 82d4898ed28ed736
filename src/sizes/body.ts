import { MM_PER_UNIT } from "../units/length.ts";
import type { BodyMeasure, SizeRow, SizeTable } from "./size-table.ts";
import { baby } from "./tables/baby.ts";
import { child } from "./tables/child.ts";
import { man } from "./tables/man.ts";
import { woman } from "./tables/woman.ts";

const TABLES: readonly SizeTable[] = [baby, child, woman, man];

/** A measurement of the body in one size. */
export interface BodyLength {
  /** The value, or the middle of the range, that is reckoned with. */
  readonly mm: number;
  readonly leastMm: number;
  readonly mostMm: number;
  /** Why it is to be taken with care; undefined where it was seen and nothing speaks against it. */
  readonly uncertain?: string;
}

/** A column of a table. */
export interface Size {
  /** As it is written in a file: "woman M". */
  readonly name: string;
  readonly source: string;
  /** The measurements for which a value is known. */
  readonly lengths: ReadonlyMap<BodyMeasure, BodyLength>;
}

/** Every size by its name: "baby 12 months", "child 6", "woman M", "man L". */
export const SIZES: ReadonlyMap<string, Size> = new Map(
  TABLES.flatMap((table) => table.sizes.map((_, column) => sizeOf(table, column))).map((size) => [
    size.name,
    size,
  ]),
);

function sizeOf(table: SizeTable, column: number): Size {
  const lengths = new Map<BodyMeasure, BodyLength>();
  for (const [measure, row] of Object.entries(table.rows) as [BodyMeasure, SizeRow][]) {
    const length = lengthOf(row, column, table.sizes[column]!);
    if (length) lengths.set(measure, length);
  }
  return { name: `${table.of} ${table.sizes[column]}`, source: table.source, lengths };
}

/** The printed centimetres where there are any, else the printed inches at 25.4 mm each. */
function lengthOf(row: SizeRow, column: number, size: string): BodyLength | undefined {
  const [cm, inches] = [row.cm?.[column], row.inches[column]];
  const printed = cm ?? inches;
  if (printed == null) return undefined;
  const unitMm = cm == null ? MM_PER_UNIT.in : MM_PER_UNIT.cm;
  const [least = Number.NaN, most = least] = printed.split("-").map((value) => Number(value) * unitMm);
  const uncertain = row.fromMemory?.includes(size)
    ? "it was not seen in print and stands here from memory"
    : row.uncertain;
  return {
    mm: (least + most) / 2,
    leastMm: least,
    mostMm: most,
    ...(uncertain !== undefined && { uncertain }),
  };
}
