import {
  ASYMMETRIC_MATCHERS_OBJECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from "@vitest/expect";
import * as chai from "chai";

/** What the core's tests use of vitest, said by mocha, which can run a loaded test again in the same process. */

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = (value, message) => chai.expect(value, message);
Object.assign(expect, chai.expect, globalThis[ASYMMETRIC_MATCHERS_OBJECT]);
setState({ assertionCalls: 0, isExpectingAssertions: false, expectedAssertionsNumber: null }, expect);

/** A title with the values of its row: `%s` and the like in order, or `$name` where the row is an object. */
function titled(title, values) {
  let next = 0;
  return title
    .replace(/%[sdifjo]/g, () => String(values[next++]))
    .replace(/\$(\w+)/g, (whole, name) => String(values[0]?.[name] ?? whole));
}

const eachOf = (define) => (table) => (title, body) => {
  for (const row of table) {
    const values = Array.isArray(row) ? row : [row];
    define(titled(title, values), () => body(...values));
  }
};

export const describe = (title, body) => globalThis.describe(title, body);
describe.each = eachOf(describe);

export const test = (title, body) => globalThis.it(title, () => body());
test.each = eachOf(test);

export const beforeAll = (body) => globalThis.before(() => body());
export const beforeEach = (body) => globalThis.beforeEach(() => body());
export const afterEach = (body) => globalThis.afterEach(() => body());
export const afterAll = (body) => globalThis.after(() => body());
