import { describe, expect, it } from "vitest";
import { sketch } from "../../../src/wizard/sketch.ts";
import { answersWith } from "./support.ts";

const room = { columns: 40, rows: 11 };

describe("sketch", () => {
  it("draws a sleeve with its slopes, its marks and the rows where the motif may lie", () => {
    expect(sketch(answersWith({}), room).join("\n")).toMatchInlineSnapshot(`
      "|              |  bind-off, 43 cm
      \\::::::::::::::/  taper top
      \\::::::::::::::/
       \\::::::::::::/
       \\::::::::::::/
       \\::::::::::::/
       \\::::::::::::/
        \\::::::::::/
        \\::::::::::/
        \\::::::::::/
         \\        /     hem top
         ==========     cast-on, 22 cm"
    `);
  });

  it("draws a front with its neck", () => {
    expect(sketch(answersWith({ piece: "front" }), room).join("\n")).toMatchInlineSnapshot(`
      "|    |      |    |  bind-off, 58 cm
      |      |  |      |
      |::::::::::::::::|  neck
      |::::::::::::::::|
      |::::::::::::::::|
      |::::::::::::::::|
      |::::::::::::::::|
      |::::::::::::::::|
      |::::::::::::::::|
      |::::::::::::::::|
      |                |  hem top
      ==================  cast-on, 46 cm"
    `);
  });

  it("draws a piece that gets narrower, and is wider than long", () => {
    const answers = answersWith({
      shape: "tapered",
      width: "60 cm",
      height: "20 cm",
      "top width": "30 cm",
      taper: "20 cm",
    });
    expect(sketch(answers, room).join("\n")).toMatchInlineSnapshot(`
      "         /::::::::::::::::::::\\           bind-off, 20 cm
              /::::::::::::::::::::::\\
            /::::::::::::::::::::::::::\\
           /::::::::::::::::::::::::::::\\
          /::::::::::::::::::::::::::::::\\
        /::::::::::::::::::::::::::::::::::\\
       /                                    \\   hem top
      ========================================  cast-on, 60 cm"
    `);
  });

  it("draws nothing before width and length are known, and a straight piece until its shape is", () => {
    const { width: _, ...without } = answersWith({});
    expect(sketch(without, room)).toEqual([]);
    const { taper: __, hem: ___, from: ____, to: _____, ...halfway } = answersWith({});
    expect(sketch(halfway, room)[3]).toMatch(/^\| +\|$/);
  });
});
