import { describe, expect, test } from "vitest";
import { withRemark } from "../../../src/edit/remark.ts";

const path = ["gauge", "ground"];
const write = (text: string, remark = "new", others = ["old"]): string =>
  withRemark(text, path, remark, others);

describe("withRemark", () => {
  test("writes a line above the key, as far in as the key, with the file's line breaks", () => {
    expect(write("gauge:\n  ground: 1 # mine\n")).toBe("gauge:\n  # new\n  ground: 1 # mine\n");
    expect(write("\ufeffgauge:\r\n    ground:\r\n      rows: 1\r\n")).toBe(
      "\ufeffgauge:\r\n    # new\r\n    ground:\r\n      rows: 1\r\n",
    );
  });

  test("replaces what was written there before, and nothing else", () => {
    const text = "gauge:\n  # mine\n  # old\n  ground: 1\n";
    expect(write(text)).toBe("gauge:\n  # mine\n  # new\n  ground: 1\n");
    expect(write(write(text))).toBe(write(text));
    expect(write("gauge:\n  # older\n  ground: 1\n")).toBe("gauge:\n  # older\n  # new\n  ground: 1\n");
  });

  test.each(["gauge: { ground: 1 }\n", '{\n  "gauge": {\n    "ground": 1\n  }\n}\n', "gauge:\n  cord: 1\n"])(
    "leaves a file without room for it as it is: %j",
    (text) => {
      expect(write(text)).toBe(text);
    },
  );

  test("keeps what the lines above say, also where they are text and no remark", () => {
    const text = "title: |\n  # old\ngauge:\n  ground: 1\n";
    expect(write(text)).toBe("title: |\n  # old\ngauge:\n  # new\n  ground: 1\n");
    const top = "title: |\n  a\n\n  # old\nground: 1\n";
    expect(withRemark(top, ["ground"], "new", ["old"])).toBe(top);
  });
});
