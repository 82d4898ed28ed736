import { runBundle } from "./run-bundle.ts";

/** Name of the engine's script, put in by the build. */
declare const ENGINE_SCRIPT: string;

/** Where the thread of an engine begins. */
runBundle(new URL(ENGINE_SCRIPT, import.meta.url));
