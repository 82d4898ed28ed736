import { gaugeOff } from "../cloth/gauge-uncertainty.ts";
import type { NamedRule } from "../fit/refusal/rule.ts";
import type { Garment } from "../garment/garment.ts";
import type { Way } from "./way.ts";

/** Steps in the whole range: a share is written to a tenth of a percent. */
const stepsInAll = 1000;

/**
 * How a fit can be less steady: by holding over less and less of what the swatch leaves open, and where it does not hold
 * even for the gauge as told, by not being asked to. It disturbs by the percentage points by which the least sure count
 * may then be off without being held for.
 */
export function steadyWay({ gauge, steady = 0 }: Garment, { rule, path, lift }: NamedRule): Way {
  const all = Math.round(steady * stepsInAll);
  const { stitches, rows, cord = 0 } = gaugeOff(gauge);
  const shareAfter = (steps: number): number => (all - steps) / stepsInAll;
  const give = (one: Garment, steps: number): Garment => ({ ...one, steady: shareAfter(steps) });
  const percent = (steps: number): string => `${(all - steps) / (stepsInAll / 100)} %`;
  const most = 100 * Math.max(stitches, rows, cord);
  return {
    rule,
    mostSteps: all,
    followed: "down to 0 %",
    costPerStep: most / stepsInAll,
    widely: give,
    barely: (steps) => [
      {
        change: {
          edits: [{ path, value: percent(steps) }],
          words: `let it hold over ${percent(steps)} of what the swatch leaves open instead of ${steady === 1 ? "all" : percent(0)}`,
        },
        give: (one) => give(one, steps),
      },
    ],
    otherwise: {
      rule,
      mostSteps: 1,
      followed: "until it is not asked",
      costPerStep: most * steady,
      widely: lift,
      barely: () => [
        {
          change: { edits: [{ path, value: false }], words: "do not ask that it is steady" },
          give: lift,
        },
      ],
    },
  };
}
