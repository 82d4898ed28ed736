import { expect, test } from "vitest";
import { driver, sample } from "./support/driver.ts";

const sized = `${sample("sleeve")}sizes:
  short: { pieces: { sleeve: { outline: [{ height: 0 cm, width: 20 cm }, { height: 33 cm, width: 31 cm }, { height: 34 cm, width: 31 cm }], grow: 5 mm } } }
  usual:
`;

const heightOf = (program: ReturnType<typeof driver>): number | undefined =>
  program.garment().reading.garment?.pieces[0]?.outline.at(-1)?.heightMm;

test("the size that is asked for is explored, through changes and undo, and the solving thread is told which", () => {
  const program = driver(120, 40);
  program.send({ kind: "opened", file: "sized.yaml", text: sized, size: "usual" });
  expect(heightOf(program)).toBe(360);
  program.press("j", "+");
  expect(program.text()).not.toBe(sized);
  expect(heightOf(program)).toBe(360);
  program.press("u");
  const requests = program.effects.filter((effect) => effect.kind === "solve");
  expect(requests.map(({ size }) => size)).toEqual(["usual", "usual", "usual"]);
});

test("without a size the first one is explored, and a rule that it writes itself is changed there", () => {
  const program = driver(120, 40);
  program.send({ kind: "opened", file: "sized.yaml", text: sized });
  expect(heightOf(program)).toBe(340);
  const rules = program.garment().reading.rules.map(({ path }) => path.join("."));
  expect(rules).toContain("sizes.short.pieces.sleeve.grow");
});
