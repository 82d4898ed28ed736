import type { DxfEntity } from "dxf";
import { plainName } from "../shapes-asked.ts";

/**
 * What the texts of a style or a piece say, such as `Piece Name: FRONT`, by key. Keys are written in one case and without
 * spaces, because writers differ in both; of two texts with one key the first holds.
 */
export function textsOf(entities: readonly DxfEntity[]): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  for (const { type, string } of entities) {
    const { key, value } =
      /^(?<key>[^:]+):(?<value>.*)$/s.exec(type === "TEXT" ? (string ?? "") : "")?.groups ?? {};
    if (key === undefined || value === undefined) continue;
    const plain = plainName(key);
    if (!texts.has(plain)) texts.set(plain, value.trim());
  }
  return texts;
}

/**
 * Millimetres of one unit, by the style's text `Units: METRIC` or `ENGLISH` (ASTM D6673; that METRIC is mm and ENGLISH
 * inches is from memory). The header's own units are not used: pattern writers leave them out or wrong.
 */
export function unitMm(texts: ReadonlyMap<string, string>): number | undefined {
  const units = plainName(texts.get("units") ?? "");
  return units.startsWith("metric") ? 1 : units.startsWith("english") ? 25.4 : undefined;
}
