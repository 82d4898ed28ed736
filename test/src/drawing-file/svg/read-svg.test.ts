import { describe, expect, test } from "vitest";
import { isProblem } from "../../../../src/drawing-file/drawing.ts";
import { readSvg } from "../../../../src/drawing-file/svg/read-svg.ts";

const inMm = 'width="100mm" height="200mm" viewBox="0 0 100 200"';
const square = '<path id="front" d="M 10 190 v -50 h 20 v 50 z"/>';
const svg = (inner: string, root = inMm): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${root}>${inner}</svg>`;

function drawing(text: string) {
  const read = readSvg(text);
  if (isProblem(read)) throw new Error(read.problem);
  return read;
}

const shape = (text: string, id = "front") => drawing(text).shapes.find(({ name }) => name === id)!;

/** Width and height of a shape's line, in mm. */
function extent(text: string, id = "front"): readonly [number, number] {
  const points = shape(text, id).contours.flatMap((line) => line.points);
  const span = (values: readonly number[]): number =>
    Number((Math.max(...values) - Math.min(...values)).toFixed(3));
  return [span(points.map(([x]) => x)), span(points.map(([, y]) => y))];
}

describe("units", () => {
  test.each([
    [inMm, [20, 50], 0],
    ['width="10cm" height="20cm" viewBox="0 0 100 200"', [20, 50], 0],
    ['width="10in" height="20in" viewBox="0 0 100 200"', [50.8, 127], 0],
    ['width="72pt" height="144pt" viewBox="0 0 100 200"', [5.08, 12.7], 0],
    ['width="100px" height="200px" viewBox="0 0 100 200"', [5.292, 13.229], 1],
    ['width="200" height="400" viewBox="0 0 100 200"', [10.583, 26.458], 1],
    ['viewBox="0 0 100 200"', [5.292, 13.229], 1],
    ['width="100%" height="100%" viewBox="0 0 100 200"', [5.292, 13.229], 1],
    ["", [5.292, 13.229], 1],
    // 96 px are an inch, so 20 units are 20 px.
    ['width="100mm" height="200mm"', [5.292, 13.229], 1],
    ['width="100mm" height="100mm" viewBox="0 0 100 200"', [10, 25], 1],
    ['width="100mm" height="100mm" viewBox="0 0 100 200" preserveAspectRatio="none"', [20, 25], 0],
  ])("%s", (root, size, remarks) => {
    const text = svg(square, root);
    expect(extent(text)).toEqual(size);
    expect(drawing(text).remarks).toHaveLength(remarks);
  });

  test("that are no sizes are refused", () => {
    for (const box of ["0 0 0 10", "0 0 10", "0 0 x 10", "0 0 -5 10"])
      expect(readSvg(svg(square, `viewBox="${box}"`))).toMatchObject({
        problem: expect.stringContaining("viewBox"),
      });
  });

  test("up the page is up the piece", () => {
    const [first] = shape(svg('<path id="front" d="M 0 0 L 0 50"/>')).contours;
    expect(first?.points.map(([, y]) => y + 0)).toEqual([0, -50]);
  });
});

describe("elements", () => {
  test.each([
    ['<rect id="front" x="5" y="5" width="20" height="50"/>'],
    ['<polygon id="front" points="5,5 25,5 25,55 5,55"/>'],
    ['<polyline id="front" points="5 5 25 5 25 55 5 55"/>'],
    [
      '<g transform="translate(3 4) scale(2)"><g transform="rotate(90)"><rect id="front" width="25" height="10"/></g></g>',
    ],
    ['<svg:path xmlns:svg="http://www.w3.org/2000/svg" id="front" d="M 0 0 h 20 v 50 h -20 z"/>'],
    ['<defs><path id="front" d="M 0 0 h 20 v 50 h -20 z"/></defs><use href="#front"/>'],
  ])("can be the line: %s", (inner) => {
    expect(shape(svg(inner)).refusal).toBeUndefined();
    expect(extent(svg(inner))).toEqual([20, 50]);
  });

  test("a line without an id is offered where it is the only one", () => {
    expect(drawing(svg('<path d="M 0 0 h 9"/>')).shapes.map(({ name }) => name)).toEqual([""]);
    expect(drawing(svg('<path d="M 0 0 h 9"/><path d="M 0 0 h 9"/>')).shapes).toEqual([]);
  });

  test.each([
    ['<circle id="front" r="4"/>', "no cast-on edge"],
    ['<use id="front" href="#other"/>', "give the id of that element"],
    ['<g id="front"><path d="M 0 0 h 9"/></g>', "it is a group"],
    ['<text id="front">front</text>', "it is text"],
    ['<rect id="front" width="20" height="50" rx="4"/>', "sharp corners"],
    ['<rect id="front" width="50%" height="50"/>', "plain numbers"],
    [`<g><svg x="10">${square}</svg></g>`, "nested svg, line 1"],
    [`<symbol id="s">${square}</symbol>`, "it lies in a symbol"],
    [`<g style="transform: rotate(5deg)">\n${square}</g>`, "CSS transform (style on line 1)"],
    [`<style>path { transform: scale(2) }</style>${square}`, "style sheet"],
    ['<path id="front" style="d: path(\'M 0 0 h 9\')"/>', "given by CSS"],
    [`<g transform="rotate(30deg)">${square}</g>`, '"rotate(30deg)" on line 1 cannot be read'],
    [`<g transform="translate(1 2 3)">${square}</g>`, "cannot be read"],
    [`<g transform="matrix(1 0 0 1 1-2)">${square}</g>`, "cannot be read"],
    ['<path id="front" d="M 0 0 L 1e300 0"/>', "beyond all measure"],
  ])("that cannot be followed are named with the reason: %s", (inner, words) => {
    expect(shape(svg(inner)).refusal).toContain(words);
  });

  test("colours and line widths in a style move nothing", () => {
    const styled = `<style>path { stroke-width: 2; fill: none }</style><g style="fill:none;stroke-width:3">${square}</g>`;
    expect(extent(svg(styled))).toEqual([20, 50]);
  });

  test("a path that breaks off is said with its line in the drawing", () => {
    const [remark] = shape(svg('\n\n<path id="front" d="M 0 0 L 5 5 6"/>')).remarks;
    expect(remark).toMatch(/^line 3: .*the line is used up to there$/);
  });
});

describe("what is no drawing", () => {
  test.each([
    ["", "Start tag expected"],
    ["just words", "line 1 is not well-formed XML"],
    ["<svg><g></svg>", "line 1 is not well-formed XML"],
    ["<html><body/></html>", "its outermost element is html"],
    ["<svg", "line 1 is not well-formed XML"],
    [`<svg>${"<g>".repeat(50_000)}${"</g>".repeat(50_000)}</svg>`, "more than 100 deep"],
    ['<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hosts">]><svg>&x;</svg>', "cannot be read"],
    ['<svg><path __proto__="1" d="M 0 0"/></svg>', "cannot be read"],
  ])("is refused with a message: %#", (text, words) => {
    expect(readSvg(text)).toMatchObject({ problem: expect.stringContaining(words) });
  });

  test("entities are not put in, so that none can swell", () => {
    const bomb = Array.from(
      { length: 30 },
      (_, level) => `<!ENTITY l${level + 1} "${`&l${level};`.repeat(10)}">`,
    );
    const text = `<!DOCTYPE svg [<!ENTITY l0 "lol">${bomb.join("")}]>${svg(`<text>&l30;</text>${square}`)}`;
    expect(extent(text)).toEqual([20, 50]);
  });
});
