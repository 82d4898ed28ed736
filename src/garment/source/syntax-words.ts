import type { ErrorCode } from "yaml";

interface Words {
  readonly message: string;
  readonly expected: string;
}

/** What the parser of YAML stumbles over, in a knitter's words, by the parser's own codes. */
const WORDS: Readonly<Record<ErrorCode, Words>> = {
  ALIAS_PROPS: {
    message: "a reference (*name) can't have a name or a kind of its own",
    expected: "*name alone",
  },
  BAD_ALIAS: { message: "a reference (*name) has no proper name", expected: "* and a name" },
  BAD_COLLECTION_TYPE: {
    message: "a kind is given (!name) that does not fit",
    expected: "the value without it",
  },
  BAD_DIRECTIVE: { message: "a line that starts with % can't stand here", expected: "the file without it" },
  BAD_DQ_ESCAPE: {
    message: "a \\ in double quotes has a meaning of its own",
    expected: "single quotes, or \\\\",
  },
  BAD_INDENT: {
    message: "this line does not line up",
    expected: "the same number of spaces before all the keys, or dashes, that belong together",
  },
  BAD_PROP_ORDER: {
    message: "a name (&name) stands in the wrong place",
    expected: "it after the - or the :",
  },
  BAD_SCALAR_START: { message: "a text can't start with this sign", expected: "the text in quotes" },
  BLOCK_AS_IMPLICIT_KEY: {
    message: "there are two keys in one line, or this line is indented further than the one above",
    expected: "one key a line, or text that holds a colon in quotes",
  },
  BLOCK_IN_FLOW: {
    message: "a comma or a bracket is missing here",
    expected: "a comma between any two values in brackets",
  },
  DUPLICATE_KEY: { message: "this key stands here twice", expected: "it once" },
  IMPOSSIBLE: { message: "this can't be read", expected: "a key, a colon, a space and a value" },
  KEY_OVER_1024_CHARS: { message: "this key is too long", expected: "a short key" },
  MISSING_CHAR: {
    message: "a colon, a comma or a quote is missing",
    expected: "a key, a colon, a space and a value",
  },
  MULTILINE_IMPLICIT_KEY: {
    message: "there is no colon after this key",
    expected: "a key, a colon, a space and a value",
  },
  MULTIPLE_ANCHORS: { message: "this has two names (&name)", expected: "one name" },
  MULTIPLE_DOCS: {
    message: "the file holds more than one garment",
    expected: "one garment a file, so no line --- or ...",
  },
  MULTIPLE_TAGS: { message: "this has two kinds (!name)", expected: "the value without them" },
  NON_STRING_KEY: {
    message: "a list or a group of keys stands where a key should",
    expected: "a word as the key",
  },
  RESOURCE_EXHAUSTION: {
    message: "lists and keys lie inside one another too deep",
    expected: "a file like the samples",
  },
  TAB_AS_INDENT: { message: "this line is indented with a tab", expected: "spaces" },
  TAG_RESOLVE_FAILED: {
    message: "a kind (!name) can't be given to a value here",
    expected: "the value without it",
  },
  UNEXPECTED_TOKEN: { message: "this can't stand here", expected: "a key, a colon, a space and a value" },
};

const UNCLOSED_QUOTE: Words = {
  message: "this quote is never closed",
  expected: "the same quote at the text's end",
};
const UNCLOSED_BRACKET: Words = {
  message: "this bracket is never closed",
  expected: "the matching ] or }, and nothing outside it that is not indented",
};
const MISSING_COMMA: Words = {
  message: "a comma is missing before this",
  expected: "a comma between two values",
};
const MISSING_DASH: Words = {
  message: "a list goes on without its dash",
  expected: "a dash and a space before each entry",
};
const MISSING_SPACE: Words = {
  message: "a space is missing",
  expected: "a space after each colon and dash, and before #",
};
const MISSING_COLON: Words = {
  message: "there is no colon after this key",
  expected: "a key, a colon, a space and a value",
};

/** One code of the parser stands for several mistakes; its English tells them apart. */
const FINER: readonly (readonly [pattern: RegExp, words: Words])[] = [
  [/^Missing closing .quote/, UNCLOSED_QUOTE],
  [/^Flow .* must (?:be|end)/, UNCLOSED_BRACKET],
  [/^Missing , /, MISSING_COMMA],
  [/^Sequence item without/, MISSING_DASH],
  [/^Missing space|must be separated/, MISSING_SPACE],
  [/need to be followed by map values/, MISSING_COLON],
];

/** A mistake that lies where something was opened, not where the parser noticed that it was never closed. */
export const isUnclosed = (words: Words): boolean => words === UNCLOSED_QUOTE || words === UNCLOSED_BRACKET;

export function syntaxWords(code: ErrorCode, message: string): Words {
  return FINER.find(([pattern]) => pattern.test(message))?.[1] ?? WORDS[code];
}
