/**
 * How near to each other presses of the foot switch's key are one press, in ms. Longer than the pause before a held key
 * repeats (660 ms in X11, 500 ms elsewhere; from memory, no published source), shorter than any row takes by hand.
 */
export const usualRestMs = 700;

/**
 * Tells a foot switch's presses from its bouncing and from the repeats of a foot that rests on it: a terminal is told
 * of keys going down alone, so a press counts only when the key was quiet for a while.
 */
export function createFootSwitch(restMs: number): (nowMs: number) => boolean {
  let last = Number.NEGATIVE_INFINITY;
  return (nowMs) => {
    const counts = nowMs - last >= restMs;
    last = nowMs;
    return counts;
  };
}
