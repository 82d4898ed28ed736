import { execFileSync } from "node:child_process";

/** Tests that run the program run the built one, so the bundle is made anew before the first test. */
export default function setup(): void {
  execFileSync(process.execPath, ["build.config.mjs"], { stdio: ["ignore", "ignore", "inherit"] });
}
