import { homedir } from "node:os";
import { isAbsolute, join } from "node:path";

/**
 * The folder for what the program keeps from one run to the next, by the XDG Base Directory Specification 0.8:
 * `$XDG_STATE_HOME`, by default `~/.local/state`; a relative path there is invalid and is not looked at.
 */
export function stateFolder(
  environment: Readonly<Record<string, string | undefined>> = process.env,
  home: string = homedir(),
): string {
  const stated = environment.XDG_STATE_HOME;
  const base = stated !== undefined && isAbsolute(stated) ? stated : join(home, ".local", "state");
  return join(base, "evenrow");
}
