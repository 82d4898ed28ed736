import { conformingEngine } from "./support/engine-conformance.ts";
import { glpkEngine } from "./support/glpk-engine.ts";

// GLPK stands for readers of the LP text that this program knows nothing of; it is fed by the test's own reader.
conformingEngine("GLPK on the LP text", () => glpkEngine, { refuses: false, tells: false });
