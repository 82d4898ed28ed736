import { describe, expect, test } from "vitest";
import { flatPath } from "../../../../src/drawing-file/svg/path.ts";

/** Points as they stand on the page, y downward. */
function read(data: string, transforms: readonly string[] = []) {
  const { contours, ...told } = flatPath(data, transforms, { xMm: 1, yMm: -1 });
  return { lines: contours.map(({ points, closed }) => ({ points, closed })), ...told };
}

const pointsOf = (data: string, transforms: readonly string[] = []) =>
  read(data, transforms).lines[0]?.points;

describe("the grammar's own examples (SVG 2, section 9.3)", () => {
  test.each([
    // Numbers end where they can't go on.
    [
      "M0.6.5L10-20",
      [
        [0.6, 0.5],
        [10, -20],
      ],
    ],
    [
      "M 100-200 L 5 5",
      [
        [100, -200],
        [5, 5],
      ],
    ],
    [
      "M 0.6.5 7 8",
      [
        [0.6, 0.5],
        [7, 8],
      ],
    ],
    // A first m is absolute, and further pairs are lines, relative ones after m.
    [
      "m 100,100 50,0 0,50",
      [
        [100, 100],
        [150, 100],
        [150, 150],
      ],
    ],
    [
      "M 100 100 L 200 200",
      [
        [100, 100],
        [200, 200],
      ],
    ],
    [
      "M100 100L200 200",
      [
        [100, 100],
        [200, 200],
      ],
    ],
    [
      "M 100 200 L 200 100 -100 -200",
      [
        [100, 200],
        [200, 100],
        [-100, -200],
      ],
    ],
    [
      "M 1 2 H 5 6 V 7 h -1 v -2",
      [
        [1, 2],
        [5, 2],
        [6, 2],
        [6, 7],
        [5, 7],
        [5, 5],
      ],
    ],
    // Leading zeros and exponents are numbers too.
    [
      "M 007 -01 L 1e1 05e-1",
      [
        [7, -1],
        [10, 0.5],
      ],
    ],
  ])("%s", (data, points) => {
    expect(read(data)).toEqual({ lines: [{ points, closed: false }] });
  });

  test("m 100,100 50,0 0,50 z is a closed line of three points", () => {
    expect(read("m 100,100 50,0 0,50 z").lines).toEqual([
      {
        points: [
          [100, 100],
          [150, 100],
          [150, 150],
        ],
        closed: true,
      },
    ]);
  });

  test("after a close the next command starts where the closed line did", () => {
    expect(read("M 1 1 h 4 v 4 z l -1 -1").lines[1]).toEqual({
      points: [
        [1, 1],
        [0, 0],
      ],
      closed: false,
    });
  });

  test("flags of an arc may stand without anything between them", () => {
    expect(pointsOf("M 0 0 a5 5 0 015 5")).toEqual(pointsOf("M 0 0 a 5 5 0 0 1 5 5"));
  });

  test("S and T take up the control point only after a command of their kind", () => {
    expect(pointsOf("M 0 0 C 0 10 10 10 10 0 S 20 -10 20 0")).toEqual(
      pointsOf("M 0 0 C 0 10 10 10 10 0 C 10 -10 20 -10 20 0"),
    );
    expect(pointsOf("M 0 0 L 10 0 S 20 -10 20 0")).toEqual(pointsOf("M 0 0 L 10 0 C 10 0 20 -10 20 0"));
    expect(pointsOf("M 0 0 Q 5 10 10 0 T 20 0")).toEqual(pointsOf("M 0 0 Q 5 10 10 0 Q 15 -10 20 0"));
    expect(pointsOf("M 0 0 L 10 0 T 20 0")).toEqual([
      [0, 0],
      [10, 0],
      [20, 0],
    ]);
  });

  test("nothing is no mistake", () => {
    expect(read("")).toEqual({ lines: [] });
    expect(read(" \n ")).toEqual({ lines: [] });
  });
});

describe("a path that breaks off", () => {
  test.each([
    [
      "M 10,10 L 20,20,30",
      [
        [10, 10],
        [20, 20],
      ],
      "from character 19 on",
    ],
    [
      "M 1 1 L 5 5 A 5 5 0 2 1 3 3 L 9 9",
      [
        [1, 1],
        [5, 5],
      ],
      "from character 21 on",
    ],
    [
      "M 1 1 L 5 5 L",
      [
        [1, 1],
        [5, 5],
      ],
      "from character 14 on",
    ],
    [
      "M 1 1 L 5 5 X 7 7",
      [
        [1, 1],
        [5, 5],
      ],
      "from character 13 on",
    ],
    // Catmull-Rom curves are in no version of SVG, and the parser behind this knows them.
    [
      "M 1 1 L 5 5 R 7 7 8 8",
      [
        [1, 1],
        [5, 5],
      ],
      "from character 13 on",
    ],
  ])("is used up to its first bad segment: %s", (data, points, words) => {
    const { lines, broken } = read(data);
    expect(lines).toEqual([{ points, closed: false }]);
    expect(broken).toContain(words);
  });

  test("names the bearing command, which is only a proposal", () => {
    expect(read("M 1 1 L 5 5 B 30 L 9 9").broken).toMatch(/command B \(bearing\) at character 13/);
  });

  test("that does not begin with a move gives nothing", () => {
    expect(read("L 3 3")).toEqual({ lines: [], broken: "it does not start with M or m" });
  });
});

describe("transforms", () => {
  test("are done from the element outward", () => {
    expect(pointsOf("M 1 0 L 2 0", ["translate(10 0)", "scale(2)"])).toEqual([
      [22, 0],
      [24, 0],
    ]);
    expect(pointsOf("M 1 0 L 2 0", ["scale(2)", "translate(10 0)"])).toEqual([
      [12, 0],
      [14, 0],
    ]);
  });

  test("turn arcs over with the page", () => {
    const arc = pointsOf("M 0 0 A 10 10 0 0 1 20 0", ["scale(1 -1)"])!;
    expect(arc[Math.floor(arc.length / 2)]![1]).toBeGreaterThan(9.9);
  });
});

test.each([
  ["M 0 0 L 1e308 0", "beyond all measure"],
  ["M 0 0 L 1e999 0", "beyond all measure"],
  ["M 0 0 L 1 1", undefined],
  [`M 0 0 ${"h1 v1 ".repeat(10_001)}`, "more than 20000 points"],
])("coordinates beyond all measure and endless lines are refused: %#", (data, words) => {
  const { refusal } = read(data);
  if (words === undefined) expect(refusal).toBeUndefined();
  else expect(refusal).toContain(words);
});
