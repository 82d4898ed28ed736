import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { commandTable } from "../../../src/cli/command-table.ts";
import { runCommandLine } from "../../../src/cli/run.ts";
import { openSession, type TerminalSession } from "../../support/terminal-session.ts";

/** A folder with files of every kind, in which the shells look for names. */
let folder = "";

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "evenrow-completion-"));
  mkdirSync(join(folder, "patterns"));
  for (const name of [
    "sleeve.yaml",
    "hat.yml",
    "fit.json",
    "long front.yaml",
    "notes.txt",
    "hat.txt",
    "fit.txt",
  ])
    writeFileSync(join(folder, name), "");
  for (const shell of ["bash", "zsh", "fish"])
    writeFileSync(join(folder, `_${shell}`), (await said("completion", shell)).out);
});
afterAll(() => rmSync(folder, { recursive: true }));

async function said(...words: readonly string[]) {
  const told = { out: "", err: "" };
  const code = await runCommandLine(words, {
    out: (text) => {
      told.out += `${text}\n`;
    },
    say: (text) => {
      told.err += text;
    },
    columns: 80,
    interactive: false,
    readStdin: async () => new Uint8Array(),
  });
  return { code, ...told };
}

const isThere = (shell: string): boolean => {
  try {
    execFileSync(shell, ["-c", "true"]);
    return true;
  } catch {
    return false;
  }
};

/** What a shell offers in place of the last word of a command line. */
type Asked = (words: readonly string[]) => readonly string[];

const lines = (text: string): readonly string[] => text.split("\n").filter((line) => line !== "");

const inBash: Asked = (words) =>
  lines(
    execFileSync(
      "bash",
      [
        "--norc",
        "-c",
        `source _bash; complete -p evenrow >/dev/null
          COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _evenrow
          printf '%s\\n' "\${COMPREPLY[@]}"`,
        "bash",
        ...words,
      ],
      { cwd: folder, encoding: "utf8" },
    ),
  );

/** As typed, so that words with a blank in them are not asked for here. */
const inFish: Asked = (words) =>
  lines(
    execFileSync("fish", ["--no-config", "-c", 'source _fish; complete -C "$argv"', words.join(" ")], {
      cwd: folder,
      encoding: "utf8",
    }),
  ).map((line) => line.split("\t")[0]!.replace(/\/$/, ""));

const sorted = (words: readonly string[]): readonly string[] => [...new Set(words)].sort();

const garments = sorted(["sleeve.yaml", "hat.yml", "fit.json", "long front.yaml", "patterns"]);
const everything = sorted([...garments, "notes.txt", "hat.txt", "fit.txt"]);
const names = commandTable.map(({ name }) => name);

const shells: readonly { readonly shell: string; readonly asked: Asked }[] = [
  { shell: "bash", asked: inBash },
  { shell: "fish", asked: inFish },
];

const named = (shell: string): string =>
  `in ${shell}${isThere(shell) ? "" : " (skipped: it is not installed here)"}`;

for (const { shell, asked } of shells)
  describe.skipIf(!isThere(shell))(named(shell), () => {
    const offered = (words: readonly string[]): readonly string[] =>
      sorted(asked(words).filter((word) => !/^_/.test(word)));

    test("a first word is a command", () => {
      expect(offered(["evenrow", ""]).filter((word) => !word.startsWith("-"))).toEqual(sorted(names));
      expect(offered(["evenrow", "sh"])).toEqual(["sheet"]);
    });

    test("an option is one of the command's own", () => {
      for (const { name, options } of commandTable)
        expect(offered(["evenrow", name, "--"]), name).toEqual(
          sorted([...options, { name: "help" }].map((option) => `--${option.name}`)),
        );
      expect(offered(["evenrow", "fit", "-"])).toContain("-o");
    });

    test("a value that is one of a few words is completed", () => {
      for (const { name, options } of commandTable)
        for (const { name: option, words } of options)
          if (words) expect(offered(["evenrow", name, `--${option}`, ""]), option).toEqual(sorted(words));
      expect(offered(["evenrow", "completion", ""])).toEqual(["bash", "fish", "zsh"]);
    });

    test("a file is a garment, a sheet to follow, or any for an output", () => {
      expect(offered(["evenrow", "fit", ""])).toEqual(garments);
      expect(offered(["evenrow", "chart", "--view", "worn", "sl"])).toEqual(["sleeve.yaml"]);
      expect(offered(["evenrow", "gauge", "--into", ""])).toEqual(garments);
      expect(offered(["evenrow", "work", "--sheet", ""])).toEqual(["fit.json", "patterns"]);
      for (const flag of ["--output", "-o"])
        expect(offered(["evenrow", "sheet", flag, ""]), flag).toEqual(everything);
    });

    test("nothing is offered where only the knitter knows", () => {
      expect(offered(["evenrow", "fit", "--rivals", ""])).toEqual([]);
      expect(offered(["evenrow", "gauge", ""])).toEqual([]);
    });
  });

describe.skipIf(!isThere("zsh"))(named("zsh"), () => {
  let session: TerminalSession;

  beforeAll(async () => {
    session = openSession(["zsh", "-f", "-i"], { columns: 120, rows: 60, environment: { ZDOTDIR: folder } });
    session.send(`cd ${folder}; PS1='ready> '; autoload -Uz compinit; compinit -u -D; eval "$(<_zsh)"\r`);
    session.send("unsetopt list_ambiguous; setopt no_beep; LISTMAX=999; clear\r");
    await session.shows(/^ready> $|^ready>$/);
  });
  afterAll(() => session.kill("SIGKILL"));

  async function shows(keys: string, shown: string | RegExp): Promise<void> {
    session.send(keys);
    await session.shows(shown);
    session.send("\u0015clear\r");
    await session.until(() => session.screen().filter((line) => line !== "").length <= 1, "an empty screen");
  }

  /** Completes what is typed; what is typed after that shows that the shell is done with it. */
  const becomes = (typed: string, line: string): Promise<void> => shows(`${typed}\tEND`, `ready> ${line}END`);

  test("a first word is a command, with what it does", async () => {
    await becomes("evenrow shee", "evenrow sheet ");
    await shows("evenrow \t", /^completion +-- a script that completes/);
  });

  test("an option and its words are completed", async () => {
    await becomes("evenrow sheet --pap", "evenrow sheet --paper ");
    await becomes("evenrow sheet --paper l", "evenrow sheet --paper letter ");
    await shows("evenrow work --\t", /^--where +-- only say where the work stands/);
  });

  test("a file is a garment, a sheet to follow, or any for an output", async () => {
    await becomes("evenrow fit l", "evenrow fit long\\ front.yaml ");
    await becomes("evenrow fit h", "evenrow fit hat.yml ");
    await becomes("evenrow fit -o n", "evenrow fit -o notes.txt ");
    await becomes("evenrow work --sheet f", "evenrow work --sheet fit.json ");
  });
});

test("a shell that is not known is refused with those that are", async () => {
  expect(await said("completion", "sh")).toMatchObject({ code: 2, out: "" });
  expect((await said("completion")).err).toContain("bash, zsh, fish");
});

const withWords = commandTable.flatMap(({ name, options }) =>
  options.flatMap(({ name: option, words }) => {
    // What a command cannot do without: the row it is about, and what was measured there.
    const needed = Object.entries({ row: "1", length: "1 cm" }).flatMap(([needs, value]) =>
      options.some((other) => other.name === needs) ? [`--${needs}`, value] : [],
    );
    return words ? [{ name, option, words, needed }] : [];
  }),
);

test.each(withWords)(
  "$name --$option takes the words that are offered, and says so of any other",
  async (one) => {
    const { code, err } = await said(
      one.name,
      "samples/sleeve.yaml",
      ...one.needed,
      `--${one.option}`,
      "nonsense",
    );
    expect(code).toBe(2);
    for (const word of one.words) expect(err).toContain(word);
    expect(err).toMatch(new RegExp(`${one.option}\\b.*nonsense`, "s"));
  },
);
