import { readdirSync, readFileSync, rmSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { parse } from "yaml";
import { commandTable } from "../src/cli/command-table.ts";
import { BUILT_IN_MOTIFS } from "../src/motif/builtin/index.ts";
import { enterWorkshop, type Ran, readShownLine, type Workshop } from "./support/command-line.ts";
import { type Block, type Document, readDocument } from "./support/markdown.ts";
import { fitHere, soundGarment } from "./support/run-garment.ts";

/**
 * What the documents show is run: each command line in a folder with the samples, each garment through the reader and
 * the fit, each printed text against what the command before it prints. A block or line that is not run stands here
 * by its beginning, with the reason; whatever else is added to a document has to run.
 */
const notRun: readonly { readonly begins: string; readonly because: string }[] = [
  {
    begins: "npm ci",
    because: "a test runs only where it was installed; .ci/run does it in a clean checkout",
  },
  { begins: "npm test", because: "it is this" },
  { begins: "tui/ ", because: "the map of the folders, which a test below holds to them" },
  { begins: "import type { ShapeDescription }", because: "test/checks/shape-documents.test.ts runs it" },
  {
    begins:
      "format: evenrow/1\nbed: { needles: 150 }\ngauge:\n  ground: { stitches: 22, rows: 31, over: 10 cm }\n  cord: { needles: 3, stitches: 19, over: 10 cm }\npieces:\n  cover:",
    because: "it needs the shape above it; test/checks/shape-documents.test.ts runs it with that",
  },
];

/** What a reader has done before a line, where the line takes it for granted. */
const before: readonly { readonly line: RegExp; readonly run: readonly string[] }[] = [
  { line: /^evenrow work .*--(measure|sheet)/, run: ["evenrow work samples/sleeve.yaml --row 50"] },
  {
    line: /--sheet refit\.json/,
    run: ['evenrow refit samples/sleeve.yaml --row 50 --length "17 cm" --json -o refit.json --force'],
  },
];

/** Files that a document tells the reader to write, each from the block that has this in it. */
const written: readonly { readonly file: string; readonly has: string }[] = [
  { file: "ropes.yaml", has: "motifs:\n  ropes:" },
];

/** Files that a document shows how to add to the sources. */
const toBeAdded = ["src/shape/builtin/cushion-cover.ts"];

/** Command lines that end with another code than 0, since nothing fits there. */
const noFit = /too-narrow/;

const documents: readonly (Document & { readonly name: string })[] = ["README.md", "DEVELOPERS.md"].map(
  (name) => ({ name, ...readDocument(readFileSync(name, "utf8")) }),
);
const used = new Set<string>();

const isExcepted = (text: string): boolean => {
  const found = notRun.find(({ begins }) => text.startsWith(begins));
  if (found) used.add(found.begins);
  return found !== undefined;
};

const samples = ["samples", "samples/motifs"].flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith(".yaml"))
    .map((name): unknown => parse(readFileSync(`${folder}/${name}`, "utf8"))),
);

const files = ["solver", "src", "tui", "test", "samples", "dist"].flatMap((folder) =>
  readdirSync(folder, { recursive: true }).map((file) => `${folder}/${file}`),
);

let workshop: Workshop;
beforeAll(() => {
  workshop = enterWorkshop();
  for (const { file, has } of written) {
    const block = documents.flatMap(({ blocks }) => blocks).find(({ text }) => text.includes(has));
    if (!block) throw new Error(`no document has the block for ${file} any more`);
    workshop.write(file, block.text);
  }
});
afterAll(() => workshop.leave());

/** Commands as they are typed, without `npx`; several on a line are parted by `&&`. */
const commandsIn = (line: string): readonly string[] =>
  line
    .split("&&")
    .map((part) => part.trim().replace(/^npx evenrow/, "evenrow"))
    .filter((part) => part !== "" && !part.startsWith("#"));

const ran = new Map<string, Ran>();

/** Runs a line once, with what has to be done before it. */
async function run(command: string): Promise<Ran> {
  const known = ran.get(command);
  if (known) return known;
  for (const { line, run: first } of before)
    if (line.test(command)) for (const other of first) expect((await run(other)).code, other).toBe(0);
  const line = readShownLine(command);
  const output = line.words[1 + line.words.findIndex((word) => word === "-o" || word === "--output")];
  if (/ (-o|--output) /.test(command)) rmSync(output!, { force: true });
  const opensScreen =
    /^evenrow (explore|work)\b/.test(command) &&
    !/ --(where|notes|next|back|row|note|mistake|measure|sheet)\b/.test(command);
  const ended = opensScreen
    ? { code: await workshop.openScreen(line.words), out: "", err: "" }
    : await workshop.run(line);
  ran.set(command, ended);
  return ended;
}

async function runLine(text: string): Promise<void> {
  for (const command of commandsIn(text)) {
    if (isExcepted(command)) continue;
    const script = /^npm (?:run )?(\w+)$/.exec(command)?.[1];
    const line = script === undefined ? command : scriptOf(script);
    expect(line, `a command that is not known: ${command}`).toMatch(/^evenrow /);
    const { code, err } = await run(line);
    expect(code, `${line}\n${err}`).toBe(noFit.test(line) ? 1 : 0);
  }
}

const { scripts } = JSON.parse(readFileSync("package.json", "utf8")) as { scripts: Record<string, string> };
const scriptOf = (name: string): string => (scripts[name] ?? "").replace("node dist/evenrow.js", "evenrow");

/** The last command line of a document before a block, which is the one whose output the block shows. */
function shownBy({ blocks, spans }: Document, { line }: Block): string | undefined {
  const lines = [
    ...spans.filter(({ code }) => isRun(code)),
    ...blocks
      .filter(({ language }) => language === "sh")
      .flatMap((block) => block.text.split("\n").map((code) => ({ code, line: block.line }))),
  ];
  return lines
    .filter((one) => one.line < line)
    .sort((a, b) => a.line - b.line)
    .flatMap(({ code }) => commandsIn(code))
    .filter((command) => command.startsWith("evenrow "))
    .at(-1);
}

/** Whether code within the text is a command line to be typed, and not only a command's name. */
const isRun = (code: string): boolean => /^npx evenrow \w+ \S/.test(code) && !/\b[A-Z]{4,}\b/.test(code);

const isPart = (part: unknown, whole: unknown): boolean => {
  if (part === "..." || (Array.isArray(part) && part.length === 1 && part[0] === "...")) return true;
  if (typeof part !== "object" || part === null) return part === whole;
  if (typeof whole !== "object" || whole === null) return false;
  return Object.entries(part).every(([key, value]) => isPart(value, (whole as Record<string, unknown>)[key]));
};

const checks: Readonly<Record<string, (block: Block, document: Document) => unknown>> = {
  async sh({ text }) {
    for (const line of text.split("\n")) await runLine(line);
  },
  async text(block, document) {
    const command = shownBy(document, block);
    expect(command, "no command stands before this text").toBeDefined();
    let { out } = await run(command!);
    for (const part of block.text.split(/^\.\.\.\n/m)) {
      expect(out).toContain(part);
      out = out.slice(out.indexOf(part) + part.length);
    }
  },
  async yaml({ text }) {
    const plain = parse(text) as Record<string, unknown>;
    if ("format" in plain) return expect((await fitHere(soundGarment(text))).status).toBe("fits");
    const known = [
      ...samples,
      Object.fromEntries(BUILT_IN_MOTIFS),
      ...samples.map((sample) => (sample as { motifs?: unknown }).motifs),
    ];
    expect(
      known.some((one) => isPart(plain, one)),
      "no sample and no built-in motif has this in it",
    ).toBe(true);
  },
  json: ({ text }) => expect(() => JSON.parse(text)).not.toThrow(),
};

describe.each(documents)("$name", (document) => {
  test.each(document.blocks)("the block of line $line", async (block) => {
    if (isExcepted(block.text)) return;
    const check = checks[block.language];
    expect(check, `nothing here runs a block of "${block.language}"`).toBeDefined();
    await check!(block, document);
  });

  test.each(document.spans.filter(({ code }) => isRun(code)))("line $line: $code", ({ code }) =>
    runLine(code),
  );

  test("names only commands, options and scripts that there are", () => {
    const options = new Set(
      commandTable.flatMap((command) => command.options.map(({ name }) => `--${name}`)),
    );
    for (const { code, line } of document.spans) {
      const where = `line ${line}: ${code}`;
      const command = /^(?:npx )?evenrow ([a-z]+)/.exec(code)?.[1];
      if (command !== undefined)
        expect(
          commandTable.map(({ name }) => name),
          where,
        ).toContain(command);
      if (/^(npx )?evenrow |^-/.test(code))
        for (const [option] of code.matchAll(/(?<=^| )--[a-z-]+/g))
          if (option !== "--help") expect(options, where).toContain(option);
      const script = /^npm run ([\w-]+)/.exec(code)?.[1];
      if (script !== undefined) expect(Object.keys(scripts), where).toContain(script);
    }
  });

  test("names only files and folders that there are, whole or from some folder on", () => {
    for (const { code, line } of document.spans) {
      if (!/^[\w.-]+(\/[\w.-]+)+\.(tsx?|yaml|svg)$|^([\w.-]+\/)+$/.test(code)) continue;
      const isThere = [...files, ...toBeAdded].some((file) => `/${file}`.includes(`/${code}`));
      expect(isThere, `line ${line}: ${code}`).toBe(true);
    }
  });
});

test("the map of the house has every folder, and none that is not there", () => {
  const map = documents[1]!.blocks.find(({ text }) => text.startsWith("tui/ "))!.text;
  const named = map
    .split("\n")
    .flatMap((line) => /^ {2}((?:[\w-]+\/ +)+)/.exec(line)?.[1]?.match(/[\w-]+(?=\/)/g) ?? []);
  const folders = files.flatMap((file) => /^src\/([^/]+)\//.exec(file)?.[1] ?? []);
  expect([...named].sort()).toEqual([...new Set(folders)].sort());
});

test("nothing is excepted that is in no document any more", () => {
  for (const { blocks } of documents)
    for (const { language, text } of blocks)
      for (const part of language === "sh" ? text.split("\n").flatMap(commandsIn) : [text]) isExcepted(part);
  expect(notRun.map(({ begins }) => begins).filter((begins) => !used.has(begins))).toEqual([]);
});
