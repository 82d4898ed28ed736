/** A fenced block of a document. */
export interface Block {
  readonly language: string;
  readonly text: string;
  /** The fence's line, from 1. */
  readonly line: number;
}

/** A piece of code within the running text, without its ticks. */
interface Span {
  readonly code: string;
  readonly line: number;
}

export interface Document {
  readonly blocks: readonly Block[];
  readonly spans: readonly Span[];
}

const fence = "```";

/** The code of a document in Markdown. Fences stand at the beginning of their lines. */
export function readDocument(markdown: string): Document {
  const blocks: Block[] = [];
  const spans: Span[] = [];
  let open: { language: string; lines: string[]; line: number } | undefined;
  for (const [index, text] of markdown.split("\n").entries()) {
    const line = index + 1;
    if (open && text === fence) {
      blocks.push({ language: open.language, text: `${open.lines.join("\n")}\n`, line: open.line });
      open = undefined;
    } else if (open) open.lines.push(text);
    else if (text.startsWith(fence)) open = { language: text.slice(fence.length), lines: [], line };
    else spans.push(...[...text.matchAll(/`([^`]+)`/g)].map(([, code]) => ({ code: code!, line })));
  }
  if (open) throw new Error(`the block of line ${open.line} is never closed`);
  return { blocks, spans };
}
