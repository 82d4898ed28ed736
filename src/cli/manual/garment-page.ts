import { SECTIONS } from "../../garment/keys.ts";
import { bold, escaped, heading, paragraphs, section, tagged } from "./roff.ts";

interface Key {
  readonly means: string;
  readonly form: string;
  readonly otherwise?: string;
}

/**
 * The manual page evenrow-garment(5): every key that a garment file may have, made from the table that the reader goes by.
 *
 * @param sample a garment file to begin with
 * @param version of the program, for the foot of the page
 */
export function garmentPage(sample: string, version: string): string {
  return [
    heading("evenrow-garment", 5, version, "File Formats"),
    ...section("NAME", ["evenrow\\-garment \\- the file that says what is to be knitted"]),
    ...section(
      "DESCRIPTION",
      paragraphs(
        "A garment is a text file in YAML or JSON. A length has a unit (mm, cm, m or in), a percentage has a %, and a bare number counts stitches, rows or needles. Names of pieces, marks, motifs, strands and quantities are the knitter's own.",
      ),
    ),
    ...section("EXAMPLE", [".EX", ...sample.trimEnd().split("\n").map(escaped), ".EE"]),
    ...section("KEYS", Object.values(SECTIONS).flatMap(sectionLines)),
    ...section("SEE ALSO", [`.BR evenrow (1)`]),
    "",
  ].join("\n");
}

function sectionLines({
  where,
  keys,
}: {
  readonly where: string;
  readonly keys: Readonly<Record<string, Key>>;
}): readonly string[] {
  return [
    `.SS ${escaped(`${where[0]!.toUpperCase()}${where.slice(1)}`)}`,
    ...tagged(
      Object.entries(keys).map(([name, { means, form, otherwise }]) => [
        bold(name),
        `${means}: ${form}`,
        otherwise === undefined ? "has to be written" : `where it is not written: ${otherwise}`,
      ]),
    ),
  ];
}
