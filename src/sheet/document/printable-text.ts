import { printable } from "../../diagnostics/shown.ts";

/** Plain data as it was, but for characters in its texts that could steer a terminal or turn the direction of writing. */
export function withPrintableText<Data>(data: Data): Data {
  if (typeof data === "string") return printable(data) as Data;
  if (Array.isArray(data)) return data.map(withPrintableText) as Data;
  if (typeof data !== "object" || data === null) return data;
  return Object.fromEntries(
    Object.entries(data).map(([key, value]) => [key, withPrintableText(value)]),
  ) as Data;
}
