import { commandLinesTried } from "./command-lines.ts";
import { dxfDrawings, svgDrawings } from "./drawings.ts";
import { enginePrograms } from "./engine-programs.ts";
import { expressions } from "./expressions.ts";
import { acceptedGarments, changedGarments, rawBytes } from "./garments.ts";
import { programRuns } from "./programs.ts";
import { exploreKeys, workKeysPressed } from "./screens.ts";
import type { Target } from "./target.ts";
import { terminalKeys } from "./terminal.ts";

/** What a run goes through, in this order. */
export const targets: readonly Target[] = [
  changedGarments,
  rawBytes,
  acceptedGarments,
  expressions,
  svgDrawings,
  dxfDrawings,
  commandLinesTried,
  exploreKeys,
  workKeysPressed,
  programRuns,
  terminalKeys,
  enginePrograms,
];
