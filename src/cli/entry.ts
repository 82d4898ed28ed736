#!/usr/bin/env node
import { runBundle } from "../../solver/run-bundle.ts";
import { quickCommands } from "./quick-commands.ts";

/** Name of the script with all quick commands, put in by the build. */
declare const COMMANDS_SCRIPT: string;

const [, , command = ""] = process.argv;
if (quickCommands.includes(command)) runBundle(new URL(COMMANDS_SCRIPT, import.meta.url));
else await import("./main.ts");
