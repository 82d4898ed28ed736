import { declareClassPlugin, PluginKind } from "@stryker-mutator/api/plugin";
import {
  DryRunStatus,
  determineHitLimitReached,
  MutantRunStatus,
  TestStatus,
} from "@stryker-mutator/api/test-runner";
import Mocha from "mocha";
import { leftOut, parts } from "./parts.mjs";
import { testBundles } from "./test-bundles.mjs";

/** The tests of a suite and of those within it, in order. */
const testsOf = (suite) => [...suite.tests, ...suite.suites.flatMap(testsOf)];

/** Gives each test a name of its own: its file, its titles and, where several are called alike, which of them it is. */
function nameTests(file, suite) {
  const seen = new Map();
  for (const test of testsOf(suite)) {
    const title = test.fullTitle();
    const times = (seen.get(title) ?? 0) + 1;
    seen.set(title, times);
    test.ownName = times === 1 ? `${file}#${title}` : `${file}#${title}#${times}`;
  }
}

function keepOnly(suite, wanted) {
  suite.tests = suite.tests.filter(({ ownName }) => wanted.has(ownName));
  for (const inner of suite.suites) keepOnly(inner, wanted);
}

/** What instrumented code reads and writes: the change in force, how often it was reached, and which test runs. */
const reached = () => {
  globalThis.__stryker__ ??= {};
  return globalThis.__stryker__;
};

/**
 * Runs the tests that reach a change in one process that stays: each test file is a bundle that is compiled once and
 * loaded anew for each change, quickest file first, up to the first test that fails. Starting a test runner for each
 * change took one to two seconds a change; there are thousands.
 */
class LoadedRunner {
  /** How long each file's tests took, ms, by its path. */
  #took = new Map();

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    this.loaders = await testBundles(parts[process.env.MUTATION_PART].tests, leftOut);
  }

  /** Loads one file and runs its tests, or the wanted ones. */
  async #run(file, { wanted, bail }) {
    const mocha = new Mocha({ ui: "bdd", bail, timeout: 0, reporter: class {} });
    mocha.suite.emit("pre-require", globalThis, file, mocha);
    this.loaders.get(file)();
    nameTests(file, mocha.suite);
    if (wanted) keepOnly(mocha.suite, wanted);
    const results = [];
    const failures = [];
    await new Promise((done) => {
      const runner = mocha.run(done);
      runner.on("test", (test) => {
        reached().currentTestId = test.ownName;
      });
      runner.on("test end", (test) => {
        reached().currentTestId = undefined;
        results.push({
          id: test.ownName,
          name: test.ownName,
          timeSpentMs: test.duration ?? 0,
          status: TestStatus.Success,
        });
      });
      runner.on("fail", (test, error) => failures.push({ id: test.ownName, message: String(error.message) }));
    });
    mocha.dispose();
    return { results, failures };
  }

  async dryRun() {
    const tests = [];
    const perTest = {};
    for (const file of this.loaders.keys()) {
      reached().mutantCoverage = { static: {}, perTest: {} };
      const start = performance.now();
      const { results, failures } = await this.#run(file, { bail: false });
      this.#took.set(file, performance.now() - start);
      if (failures.length > 0)
        return {
          status: DryRunStatus.Error,
          errorMessage: `${failures[0].id ?? file}: ${failures[0].message}`,
        };
      const { static: early, perTest: own } = reached().mutantCoverage;
      for (const result of results) {
        tests.push(result);
        // What is reached while the file is read, or before its tests, is reached by each of them.
        const counts = { ...early };
        for (const [change, times] of Object.entries(own[result.id] ?? {}))
          counts[change] = (counts[change] ?? 0) + times;
        perTest[result.id] = counts;
      }
    }
    return { status: DryRunStatus.Complete, tests, mutantCoverage: { static: {}, perTest } };
  }

  async mutantRun({ activeMutant, testFilter, hitLimit }) {
    const wanted = new Set(testFilter);
    const fileOf = (id) => id.slice(0, id.indexOf("#"));
    const files = [...new Set(testFilter.map(fileOf))];
    files.sort((a, b) => (this.#took.get(a) ?? 0) - (this.#took.get(b) ?? 0));
    Object.assign(reached(), {
      activeMutant: activeMutant.id,
      hitCount: hitLimit === undefined ? undefined : 0,
      hitLimit,
    });
    let nrOfTests = 0;
    for (const file of files) {
      const of = testFilter.filter((id) => fileOf(id) === file);
      const outcome = await this.#run(file, { wanted, bail: true }).catch((error) => ({
        results: [],
        failures: [{ id: of[0], message: String(error) }],
      }));
      nrOfTests += outcome.results.length;
      const endless = determineHitLimitReached(reached().hitCount, hitLimit);
      if (endless) return { status: MutantRunStatus.Timeout, reason: endless.reason };
      const failure = outcome.failures[0];
      if (failure)
        return {
          status: MutantRunStatus.Killed,
          killedBy: [wanted.has(failure.id) ? failure.id : of[0]],
          failureMessage: failure.message,
          nrOfTests,
        };
    }
    return { status: MutantRunStatus.Survived, nrOfTests };
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, "loaded", LoadedRunner)];
