import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { claimLock } from "../../../../src/state/lock.ts";
import { workPlace } from "../../../../src/state/work-place.ts";
import { startWork } from "../../../../src/state/work-session.ts";

let folder: string;
let file: string;

beforeEach(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), "evenrow-work-command-")));
  file = join(folder, "sleeve.yaml");
  writeFileSync(file, readFileSync("samples/sleeve.yaml"));
});
afterEach(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

const evenrow = (words: readonly string[], state = join(folder, "state")): Promise<Ended> =>
  new Promise((resolve) => {
    execFile(
      process.execPath,
      ["dist/evenrow.js", "work", file, ...words],
      { env: { ...process.env, XDG_STATE_HOME: state } },
      (error, out, err) => resolve({ code: error ? Number(error.code) : 0, out, err }),
    );
  });

const where = async (...words: readonly string[]): Promise<unknown> =>
  JSON.parse((await evenrow(["--where", "--json", ...words])).out);

const place = (row: number, piece = "sleeve", rows = 112) => ({
  format: "evenrow-place/1",
  piece,
  row,
  rows,
});

test("before anything is knitted the place is row 0, and steps without the screen move it", async () => {
  expect(await where()).toEqual(place(0));
  expect((await evenrow(["--next"])).out).toBe(
    "sleeve: row 1 of 112, carriage at the left, 111 rows left.\nNow: knit 4 rows, to row 5.\nThen: increase 1 stitch at each side.\n",
  );
  await evenrow(["--row", "18", "--note", "L5 dropped", "--mistake"]);
  expect(await where()).toEqual(place(18));
  const { out } = await evenrow(["--where"]);
  expect(out).toContain("A mistake is marked at this row.\nNote: L5 dropped");
  await evenrow(["--back"]);
  expect(await where()).toEqual(place(17));
  expect((await evenrow([])).out).toContain("row 17 of 112");
});

test("a garment file that cannot be read any more is said to be so, and the place stays", async () => {
  await evenrow(["--row", "18"]);
  writeFileSync(file, readFileSync(file, "utf8").replace("interval:", "intervall:"));
  const { code, out, err } = await evenrow(["--where"]);
  expect(code).toBe(0);
  expect(out).toContain("row 18 of 112");
  expect(err).toContain("intervall");
  expect(err).toContain("gives no sheet now; the place is that of the sheet that was begun.");
});

test("a measurement without the screen is kept, and with --refit its sheet is followed", async () => {
  const told = await evenrow(["--row", "50", "--measure", "17 cm"]);
  expect(told.code).toBe(0);
  expect(told.out).toContain("it would end at 38.1 cm (within 1.1 cm), planned 36 cm.");
  expect(await where()).toEqual(place(50));
  const refitted = await evenrow(["--measure", "17 cm", "--refit"]);
  expect(refitted.out).toContain("106 rows instead of 112");
  expect(await where()).toEqual(place(50, "sleeve", 106));
  const again = await evenrow(["--row", "70", "--measure", "24.2 cm", "--refit"]);
  expect(again.out).toContain("104 rows instead of 106");
  expect(await where()).toEqual(place(70, "sleeve", 104));
});

test.each([
  [["--row", "50", "--measure", "17"], "a length needs its unit"],
  [["--row", "50", "--measure", "99 cm"], "check the row and measure again"],
  [["--refit"], "--refit needs what was measured"],
])("a measurement that says nothing is refused: %j", async (words, said) => {
  const { code, err } = await evenrow(words);
  expect(code).toBe(2);
  expect(err).toContain(said);
  expect(await where()).toEqual(place(0));
});

test("going on over many rows with something to do is said, with the way back", async () => {
  const { code, err } = await evenrow(["--row", "112"]);
  expect(code).toBe(0);
  expect(err).toBe(`sleeve: went from row 0 to row 112; evenrow work ${file} --row 0 goes back.\n`);
  expect((await evenrow(["--row", "0"])).err).toBe("");
  expect((await evenrow(["--row", "20"])).err).toBe("");
});

test("what cannot be is refused in words, and changes nothing", async () => {
  for (const [words, said] of [
    [["--back"], "sleeve is at its beginning."],
    [["--row", "113"], "sleeve has no row 113 there; it has 112 rows."],
    [["--piece", "hood", "--next"], 'The garment has no piece called "hood"; it has "sleeve".'],
    [["--row", "many"], "--row takes a number"],
  ] as const) {
    const { code, err } = await evenrow(words);
    expect([code, err]).toEqual([2, expect.stringContaining(said)]);
  }
  expect(await where()).toEqual(place(0));
});

test("another copy is told of, and its place is taken over only where that is asked for", async () => {
  await evenrow(["--next"]);
  const kept = await workPlace(join(folder, "state", "evenrow"), file);
  const claim = claimLock(kept.lock, false);
  expect(claim.status).toBe("mine");
  const held = await evenrow(["--next"]);
  expect(held.code).toBe(2);
  expect(held.err).toContain(`process ${process.pid}`);
  expect(await where()).toEqual(place(1));
  expect((await evenrow(["--next", "--take-over"])).code).toBe(0);
  expect(await where()).toEqual(place(2));
  expect(claim.status === "mine" && claim.lock.isMine()).toBe(false);
});

test("a changed file is told of with what differs, and its sheet is followed only where that is asked for", async () => {
  await evenrow(["--row", "50"]);
  writeFileSync(file, readFileSync(file, "utf8").replaceAll("36 cm", "38 cm"));
  const { code, err, out } = await evenrow(["--next"]);
  expect([code, out.split("\n")[0]]).toEqual([
    0,
    "sleeve: row 51 of 112, carriage at the left, 61 rows left.",
  ]);
  expect(err).toContain("Rows in all: 118 instead of 112. The first row that differs is row 112.");
  expect((await evenrow(["--next", "--new-sheet"])).out).toContain("row 52 of 118");
  expect((await evenrow(["--next"])).err).not.toContain("was changed");
});

test("a sheet fitted anew from what was measured is gone over to, unless it is unlike what is knitted", async () => {
  await evenrow(["--row", "50"]);
  const json = join(folder, "refit.json");
  const refit = (row: string) =>
    new Promise((resolve) => {
      const words = ["refit", file, "--row", row, "--length", "17 cm", "--json", "-o", json, "--force"];
      execFile(process.execPath, ["dist/evenrow.js", ...words], resolve);
    });
  await refit("50");
  expect((await evenrow(["--sheet", json])).out).toContain("row 50 of 106");
  expect((await evenrow(["--next"])).out).toContain("row 51 of 106");
  const own = join(folder, "sheet.json");
  writeFileSync(own, JSON.stringify({ format: "evenrow-sheet/1", pieces: [] }));
  expect((await evenrow(["--sheet", own])).err).toContain("is not a working sheet");
  await evenrow(["--row", "105"]);
  await refit("40");
  const { code, err } = await evenrow(["--sheet", json]);
  expect([code, err]).toEqual([2, expect.stringContaining("is unlike what is knitted of sleeve")]);
  expect(await where()).toEqual(place(105, "sleeve", 106));
});

test("a file that gives no sheet any more leaves the one that was begun", async () => {
  await evenrow(["--row", "50"]);
  const tooNarrow = readFileSync("samples/too-narrow.yaml", "utf8");
  for (const [text, told] of [
    ["nonsense: [", /this bracket is never closed[\s\S]*the place is that of the sheet that was begun/],
    [tooNarrow, /^$/],
  ] as const) {
    writeFileSync(file, text);
    const { code, out, err } = await evenrow(["--where"]);
    expect([code, out.split("\n")[0]]).toEqual([0, expect.stringContaining("row 50 of 112")]);
    expect(err).toMatch(told);
    expect((await evenrow(["--next"])).err).toContain("the work goes on with the sheet that was begun");
    await evenrow(["--back"]);
  }
  rmSync(file);
  expect((await evenrow(["--next"])).out).toContain("row 51 of 112");
});

test("where nothing can be kept it is said why, and nothing is counted", async () => {
  for (const state of [file, "/proc", join("/proc", "1", "state")]) {
    const { code, out, err } = await evenrow(["--next"], state);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(/The place cannot be kept in .*\. Nothing was counted\./);
  }
});

test("a place that cannot be read is left as it is and told", async () => {
  await evenrow(["--next"]);
  const { journal } = await workPlace(join(folder, "state", "evenrow"), file);
  writeFileSync(journal, "damaged\n");
  for (const words of [["--next"], ["--where"]]) {
    const { code, err } = await evenrow(words);
    expect([code, err]).toEqual([2, expect.stringContaining("To begin anew, move it away.")]);
  }
  expect(readFileSync(journal, "utf8")).toBe("damaged\n");
});

test("steps that several programs take at once are all counted or refused, none lost", async () => {
  await evenrow(["--row", "10"]);
  const all = await Promise.all(Array.from({ length: 8 }, () => evenrow(["--next"])));
  const counted = all.filter(({ code }) => code === 0).length;
  expect(counted).toBeGreaterThan(0);
  expect(await where()).toEqual(place(10 + counted));
});

test("the place of a session that is still open can be read", async () => {
  await evenrow(["--row", "18"]);
  const kept = await workPlace(join(folder, "state", "evenrow"), file);
  const starting = startWork(kept, false);
  expect(await where()).toEqual(place(18));
  if (starting.status === "open") starting.session.close();
});
