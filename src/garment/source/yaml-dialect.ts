/**
 * How garment files are parsed, wherever they are: what is read and what is edited must never be taken for two
 * different things. The core schema keeps dates and the like as text; repeated keys are found by the reader, because
 * the parser's own search takes the square of their number.
 */
export const YAML_DIALECT = {
  schema: "core",
  resolveKnownTags: false,
  stringKeys: true,
  uniqueKeys: false,
  prettyErrors: false,
  logLevel: "error",
} as const;
