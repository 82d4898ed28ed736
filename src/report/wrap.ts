/**
 * Breaks a text into lines of at most `width` characters at its spaces; a word that is longer stays whole. Spaces
 * within a line stay as they are, so that columns keep their places; the lines after the first are indented.
 */
export function wrap(text: string, width: number, indent = 0): readonly string[] {
  const lines: string[] = [];
  let rest = text;
  while (rest.length > width) {
    const start = rest.length - rest.trimStart().length;
    const end = rest.lastIndexOf(" ", width);
    // The indentation is no place to break at, however narrow the lines are.
    const at = end > start ? end : rest.indexOf(" ", Math.max(width, start));
    if (at < 0) break;
    lines.push(rest.slice(0, at).trimEnd());
    rest = " ".repeat(indent) + rest.slice(at).trimStart();
  }
  return [...lines, rest];
}
