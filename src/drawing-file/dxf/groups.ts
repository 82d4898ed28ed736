/**
 * The lines of a DXF file come in pairs: a group code and its value. Before the parser sees them they are tidied: spaces
 * at the ends go, and a decimal comma in a number becomes a point, because the parser would cut the number off there.
 *
 * @returns the tidied text, or what is wrong with it
 */
export function tidyGroups(text: string): { readonly text: string } | { readonly problem: string } {
  if (text.startsWith("AutoCAD Binary DXF"))
    return { problem: "it is a binary DXF file; save it as ASCII DXF" };
  const lines = text.split(/\r\n|\r|\n/).map((line) => line.trim());
  while (lines.at(-1) === "") lines.pop();
  for (let index = 0; index < lines.length; index += 2) {
    const code = lines[index]!;
    if (!/^\d{1,4}$/.test(code))
      return {
        problem: `it is not a DXF file: line ${index + 1} should be a group code, and is "${code.slice(0, 20)}"`,
      };
    const value = lines[index + 1];
    if (value !== undefined && isReal(Number(code)))
      lines[index + 1] = value.replace(/^([-+]?\d*),(\d+)/, "$1.$2");
  }
  return { text: `${lines.join("\n")}\n` };
}

/** Codes whose value is a number with decimals (DXF reference, group code value types). */
const isReal = (code: number): boolean => (code >= 10 && code < 60) || (code >= 210 && code < 240);
