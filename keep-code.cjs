// Preloaded by the build into one run of the program: keeps the compiled code of the bundles that run, each beside its
// bundle. What is kept holds the functions that have run by then, so that the next start need not compile them.
const { renameSync, writeFileSync } = require("node:fs");
const { syncBuiltinESMExports } = require("node:module");
const v8 = require("node:v8");
const vm = require("node:vm");
const { parentPort } = require("node:worker_threads");

// Code that has run only once is thrown away after a while, and with it all that is at the top of the scripts.
v8.setFlagsFromString("--no-flush-bytecode");

const scripts = [];
vm.Script = class extends vm.Script {
  constructor(source, { cachedData, ...options }) {
    super(source, options);
    scripts.push([options.filename, this]);
  }
};
syncBuiltinESMExports();

function keep() {
  // V8 refuses code that was kept under other flags than it runs under.
  v8.setFlagsFromString("--flush-bytecode");
  for (const [filename, script] of scripts) {
    const aside = `${filename}.code-${process.pid}`;
    writeFileSync(aside, script.createCachedData());
    renameSync(aside, `${filename}.code`);
  }
}

if (parentPort === null) process.on("exit", keep);
else {
  // A thread is ended from without, so its code is kept whenever it has answered.
  const { postMessage } = parentPort;
  parentPort.postMessage = function (message, ...rest) {
    postMessage.call(this, message, ...rest);
    if (message.outcome !== undefined) keep();
  };
}
