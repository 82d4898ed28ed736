/** Breaks a text into lines of at most `width` characters at spaces; the lines after the first are indented. */
export function wrap(text: string, width: number, indent = 0): readonly string[] {
  const lines: string[] = [];
  let line = "";
  const room = (): number => width - (lines.length === 0 ? 0 : indent);
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > room()) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.map((one, index) => (index === 0 ? one : " ".repeat(indent) + one));
}
