/** A rule that a fit does not keep. */
export interface Breach {
  readonly rule: string;
  /** What was found and what the rule asks for. */
  readonly found: string;
}

export const breach = (rule: string, found: string): Breach => ({ rule, found });

export const describeBreaches = (breaches: readonly Breach[]): string =>
  breaches.map(({ rule, found }) => `${rule}: ${found}`).join("; ");

/** Sums of costs may differ by this much between two orders of adding; costs are told to a thousandth. */
export const costTolerance = 1e-6;

/** Fractions of ease may differ by this much between two ways of working them out. */
export const easeTolerance = 1e-9;
