import type { TradeAnswer, TradeQuestion } from "../../src/explore/trade-answer.ts";

/** What the trading thread is asked. */
export interface TradeRequest extends TradeQuestion {
  readonly sequence: number;
}

/** What it tells about the request with its sequence. */
export interface TradeReport {
  readonly kind: "traded";
  readonly sequence: number;
  readonly answer: TradeAnswer;
}
