/** How many numbers each function of a transform list takes (CSS Transforms 1, section 8.2, the SVG form). */
const COUNTS: Readonly<Record<string, readonly number[]>> = {
  matrix: [6],
  translate: [1, 2],
  scale: [1, 2],
  rotate: [1, 3],
  skewX: [1],
  skewY: [1],
};

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i;

/** Whether a transform attribute is well-formed; the library that applies it passes over what is not. */
export function isTransformList(text: string): boolean {
  let rest = text.trim();
  while (rest !== "") {
    const call = /^(\w+)\s*\(([^()]*)\)[\s,]*/.exec(rest);
    const [whole, name, numbers] = call ?? [];
    if (whole === undefined || name === undefined || numbers === undefined) return false;
    const values = numbers.trim().split(/\s*,\s*|\s+/);
    const counts = Object.hasOwn(COUNTS, name) ? COUNTS[name] : undefined;
    if (!counts?.includes(values.length) || !values.every((value) => NUMBER.test(value))) return false;
    rest = rest.slice(whole.length);
  }
  return true;
}
