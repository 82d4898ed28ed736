import type { Engine } from "../../solver/program.ts";
import { RefusedFit } from "../fit/refused-fit.ts";
import { readAsk } from "../tradeoff/ask.ts";
import { type TradeOff, tradeOff } from "../tradeoff/trade.ts";
import { type Beside, readSource } from "./read-source.ts";

/** What is asked of a garment as it is being pushed about; plain data that can be passed between threads. */
export interface TradeQuestion extends Beside {
  readonly source: string;
  readonly name: string;
  /** Names of terms. */
  readonly traded: readonly string[];
  readonly held: readonly string[];
}

export type TradeAnswer =
  | { readonly kind: "traded"; readonly trade: TradeOff }
  /** In words, why there is none. */
  | { readonly kind: "none"; readonly reason: string };

/** The trade-off of a garment; never throws. */
export async function tradeAnswer(
  { source, name, traded, held, ...beside }: TradeQuestion,
  engine: Engine,
  timeLimitMs: number,
): Promise<TradeAnswer> {
  const { garment } = readSource(source, name, beside);
  if (!garment) return { kind: "none", reason: "the file has mistakes" };
  const ask = readAsk(garment, traded.join(), held.join());
  if ("refused" in ask) return { kind: "none", reason: ask.refused };
  try {
    const result = await tradeOff(garment, ask, engine, { timeLimitMs });
    if (result.status === "traded") return { kind: "traded", trade: result };
    return { kind: "none", reason: result.status === "stopped" ? result.reason : "nothing fits" };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return {
      kind: "none",
      reason:
        error instanceof RefusedFit
          ? `an answer was found, but it does not keep the garment's own rules, so it is not shown: ${reason}`
          : reason,
    };
  }
}
