import { createRequire } from "node:module";

/** The package that HiGHS comes in; the program runs without it. */
export const HIGHS_PACKAGE = "highs";

/** Whether HiGHS can be asked at all. Looks for it and does not load it. */
export function highsIsInstalled(): boolean {
  try {
    createRequire(import.meta.url).resolve(HIGHS_PACKAGE);
    return true;
  } catch {
    return false;
  }
}
