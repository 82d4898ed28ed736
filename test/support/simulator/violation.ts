/** What a sheet can ask for that no bed, carriage or cord does. */
export type Rule =
  | "act"
  | "row order"
  | "carriage"
  | "not in work"
  | "already in work"
  | "off the bed"
  | "away from the carriage"
  | "nothing to knit"
  | "gap"
  | "bind-off"
  | "hold"
  | "strand order"
  | "count"
  | "finish"
  | "cross"
  | "ladder"
  | "pattern"
  | "needles";

export interface Violation {
  readonly row: number;
  readonly rule: Rule;
  readonly message: string;
}

export type Report = (rule: Rule, message: string) => void;
