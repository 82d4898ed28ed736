/** Why a drawn line cannot be knitted as one piece, in a knitter's words. */
export interface OutlineProblem {
  readonly problem: string;
  /** What would be right. */
  readonly expected?: string;
}
