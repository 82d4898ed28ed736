import { readFileSync } from "node:fs";
import { Stryker } from "@stryker-mutator/core";
import { parts } from "./parts.mjs";

const names = Object.keys(parts);
const [asked, files] = [process.argv[2], process.argv.slice(3)];
if (asked !== undefined && !names.includes(asked)) {
  process.stderr.write(`"${asked}" is no part of the core; the parts are ${names.join(", ")}.\n`);
  process.exit(1);
}

/** Changes a part of the core, or some files of it, in every way the tool knows; returns what came of each change. */
async function outcomesOf(part) {
  // The processes that run the tests are started with what is set here.
  process.env.MUTATION_PART = part;
  const stryker = new Stryker({
    testRunner: "loaded",
    plugins: ["./test/mutation/loaded-runner.mjs"],
    mutate: files.length > 0 ? files : parts[part].mutate,
    coverageAnalysis: "perTest",
    // TypeScript 7 has no JavaScript interface to read a tsconfig.json by; the tests need none.
    tsconfigFile: "none.json",
    ignorePatterns: ["dist", ".stryker-tmp"],
    tempDirName: `.stryker-tmp/${part}-${process.pid}`,
    reporters: ["json"],
    jsonReporter: { fileName: `.stryker-tmp/${part}.json` },
    fileLogLevel: "off",
    logLevel: "warn",
    timeoutMS: 2000,
    concurrency: Number(process.env.MUTATION_AT_ONCE ?? 2),
  });
  return stryker.runMutationTest();
}

/** A change no test saw: where it is, what stood there and what stood there instead. */
function missed({ fileName, location, replacement, status }) {
  const { start, end } = location;
  const lines = readFileSync(fileName, "utf8")
    .split("\n")
    .slice(start.line - 1, end.line);
  const last = lines.length - 1;
  lines[last] = lines[last].slice(0, end.column - 1);
  lines[0] = lines[0].slice(start.column - 1);
  const short = (text) => text.replace(/\s+/g, " ").slice(0, 160);
  const seen = status === "NoCoverage" ? "reached by no test" : "not seen";
  const path = fileName.slice(fileName.indexOf("/src/") + 1);
  return `${path}:${start.line}:${start.column} ${seen}\n    ${short(lines.join("\n"))}\n    ${short(replacement)}\n`;
}

/** A part of which fewer are seen fails the run. */
const leastKilled = 85;

const rows = [];
for (const part of asked === undefined ? names : [asked]) {
  const outcomes = await outcomesOf(part);
  const of = (...states) => outcomes.filter(({ status }) => states.includes(status));
  const [killed, open] = [of("Killed", "Timeout"), of("Survived", "NoCoverage")];
  for (const outcome of open) process.stdout.write(missed(outcome));
  const share = (100 * killed.length) / (killed.length + open.length);
  rows.push({
    part,
    changes: outcomes.length,
    killed: killed.length,
    "not seen": of("Survived").length,
    "reached by no test": of("NoCoverage").length,
    "killed, %": Number(share.toFixed(1)),
  });
}
console.table(rows);
if (rows.some((row) => row["killed, %"] < leastKilled)) process.exitCode = 1;
