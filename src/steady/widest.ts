import type { Engine } from "../../solver/program.ts";
import { type FitResult, fitGarment } from "../fit/solve.ts";
import type { Garment } from "../garment/garment.ts";
import { shareGrain, slackAsFitted } from "./slack.ts";

/** Over how much of what the swatch leaves open something fits. */
export interface Widest {
  /** The greatest share over which a fit was found; absent where nothing fits even for the gauge as it is told. */
  readonly share?: number;
  /** Nothing fits over a share from here on. */
  readonly noneFrom: number;
  /** Whether the two meet, to `shareGrain`; not so where the time was up first. */
  readonly exact: boolean;
}

/**
 * The widest range over which a garment has a steady fit. Each fit that is found tells by itself how far it holds, and
 * there are only finitely many such thresholds. So the range is halved, a fit found in the upper half takes the lower
 * end to its own threshold at once, and each time it is asked whether anything fits a grain above the highest threshold
 * found. Where nothing does, that is the answer: both sides of it have been solved.
 *
 * @param garment that nothing fits over the share `over`
 * @param leftMs time that is left, in ms; nothing more is solved once there is none
 */
export async function widestSteady(
  garment: Garment,
  engine: Engine,
  over: number,
  leftMs: () => number,
): Promise<Widest> {
  let held: number | undefined;
  let none = over;
  /** Asks at a share and moves one of the two ends; false where no answer came. */
  const ask = async (share: number): Promise<boolean> => {
    const answer = await steadyOver(garment, engine, share, { rivals: 0, timeLimitMs: leftMs() });
    if (answer.status === "stopped") return false;
    if (answer.status === "does not fit") none = share;
    else held = Math.min(Math.max(slackAsFitted(answer.fit), share), none);
    return true;
  };
  let answered = leftMs() > 0 && (await ask(0));
  while (answered && held !== undefined && none - held > shareGrain && leftMs() > 0) {
    answered = await ask(held + shareGrain / 2);
    if (answered && none - held > shareGrain && leftMs() > 0) answered = await ask((held + none) / 2);
  }
  return {
    ...(held !== undefined && { share: held }),
    noneFrom: none,
    exact: none - (held ?? 0) <= shareGrain,
  };
}

/** The best fit of a garment that holds over a share of what the swatch leaves open. */
export const steadyOver = (
  garment: Garment,
  engine: Engine,
  share: number,
  options: { readonly rivals?: number; readonly timeLimitMs: number },
): Promise<FitResult> => fitGarment({ ...garment, steady: share }, engine, options);
