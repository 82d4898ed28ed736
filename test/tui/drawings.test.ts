import { expect, test } from "vitest";
import { loadDrawings } from "../../src/drawing-file/load-drawings.ts";
import { driver, sample } from "./support/driver.ts";

test("a garment whose outline is drawn keeps its drawing through changes, and the solving thread is given it too", async () => {
  const text = sample("drawn-front");
  const drawings = await loadDrawings(text, "samples/drawn-front.yaml");
  const program = driver(120, 40);
  program.send({ kind: "opened", file: "samples/drawn-front.yaml", text, drawings });
  const opened = program.garment().reading.garment;
  expect(opened?.pieces[0]?.outline.length).toBeGreaterThan(5);

  program.press("j", "+");
  expect(program.text()).not.toBe(text);
  expect(program.garment().reading.garment?.pieces[0]?.outline).toEqual(opened?.pieces[0]?.outline);
  program.press("u");
  expect(program.garment().reading.garment).toEqual(opened);

  const requests = program.effects.filter((effect) => effect.kind === "solve");
  expect(requests).toHaveLength(3);
  for (const { drawings: given } of requests) expect(given).toEqual(drawings);
});

test("without its drawing the garment says what is missing", () => {
  const program = driver();
  program.send({ kind: "opened", file: "samples/drawn-front.yaml", text: sample("drawn-front") });
  expect(program.state().screen.kind).toBe("mistakes");
  expect(program.garment().reading.diagnostics.map(({ code }) => code)).toEqual(["drawing-unreadable"]);
});
