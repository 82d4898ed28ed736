import { hold, WorkEnded, within } from "../../../../src/fit/allowance.ts";

/** Whether some work takes more than may be held. */
function isTooMuch(work: () => void): boolean {
  try {
    within(undefined, work);
    return false;
  } catch (error) {
    if (error instanceof WorkEnded) return true;
    throw error;
  }
}

/** How much may be held at once, found by trying. */
export function mostHeld(): number {
  let [fits, tooMuch] = [0, 2 ** 40];
  while (tooMuch - fits > 1) {
    const middle = Math.floor((fits + tooMuch) / 2);
    if (isTooMuch(() => hold(middle))) tooMuch = middle;
    else fits = middle;
  }
  return fits;
}

/** Whether some work asks to hold more than so much. */
export function holdsMoreThan(most: number, work: () => void): boolean {
  const before = mostHeld() - most;
  return isTooMuch(() => {
    hold(before);
    work();
  });
}
