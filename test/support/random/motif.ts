import type {
  ChoiceEntry,
  CordEntry,
  EaseEntry,
  LikeCableEntry,
  LikeCordEntry,
  MotifEntry,
} from "../garment-file.ts";
import { choiceOf, someOf } from "./choices.ts";
import type { Dice } from "./dice.ts";
import { bandMotif, sampleMotif } from "./sample-motif.ts";

export type MotifKind = "crossed cord" | "written cord" | "cable" | "sample" | "band";

/** A motif and roughly what room it wants, so that pieces can be made that may just hold it. */
export interface RandomMotif {
  readonly kind: MotifKind;
  readonly entry: MotifEntry;
  readonly name: string;
  readonly repeatRows: number;
  readonly reach: number;
}

const makers: Readonly<Record<MotifKind, (dice: Dice) => Omit<RandomMotif, "kind" | "name">>> = {
  "crossed cord": crossedCord,
  "written cord": (dice) => dice.pick([swinging, nodding, reaching, threeAbreast])(dice),
  cable,
  sample: sampleMotif,
  band: bandMotif,
};

export function randomMotif(dice: Dice, kinds: readonly MotifKind[], name: string): RandomMotif {
  const kind = dice.pick(kinds);
  return { ...makers[kind](dice), kind, name };
}

function crossedCord(dice: Dice): Omit<RandomMotif, "kind" | "name"> {
  const entry: LikeCordEntry = {
    like: "crossed cord",
    ...(dice.chance(88) && { interval: likeChoice(dice, 2, 8) }),
    ...(dice.chance(92) && { spread: likeChoice(dice, 2, 8) }),
    ...someEase(dice),
    ...(dice.chance(25) && {
      rules: [dice.pick(["spread <= interval + 2", "2 * spread >= interval", "mod(interval, 2) == 0"])],
    }),
  };
  return { entry, repeatRows: 10, reach: 5 };
}

function likeChoice(dice: Dice, least: number, most: number): ChoiceEntry {
  return dice.chance(8) ? { prefer: dice.whole(least, most) } : choiceOf(dice, least, most);
}

function cable(dice: Dice): Omit<RandomMotif, "kind" | "name"> {
  const cross: readonly [number, number] = [dice.whole(1, 4), dice.whole(1, 4)];
  const most = Math.min(...cross);
  const entry: LikeCableEntry = {
    like: "transferred cable",
    ...(dice.chance(80) && { interval: likeChoice(dice, 4, 10) }),
    cross,
    ...(dice.chance(30) && { offset: dice.whole(1 - most, most - 1) }),
    // None of these makes an odd half of a needle out of any cable here, however many columns there are.
    ...(dice.chance(30) && { "draw-in": dice.pick(["7 %", "11 %", "17 %"]) }),
  };
  return { entry, repeatRows: 7, reach: 4 };
}

function someEase(dice: Dice): { ease?: EaseEntry } {
  if (dice.chance(45)) return {};
  const from = dice.whole(-15, 0);
  const to = from + dice.whole(14, 32);
  return {
    ease: {
      ...(dice.chance(75) && { from: `${from} %` }),
      ...(dice.chance(75) && { to: `${Math.max(to, 1)} %` }),
      ...(dice.chance(60) && { prefer: `${dice.whole(-30, 100) / 10} %` }),
    },
  };
}

const quantity = (
  dice: Dice,
  unit: "rows" | "needles",
  least: number,
  most: number,
): CordEntry["quantities"][string] => ({ unit, ...choiceOf(dice, least, most) });

/** One strand that swings from side to side, its turning points shifted by a quantity of its own. */
function swinging(dice: Dice): Omit<RandomMotif, "kind" | "name"> {
  const entry: CordEntry = {
    kind: "cord",
    quantities: {
      rise: quantity(dice, "rows", 3, 7),
      swing: quantity(dice, "needles", 3, 7),
      lean: quantity(dice, "needles", 0, 2),
    },
    lead: "max(2, floor(rise / 2))",
    repeat: "2 * rise",
    strands: {
      line: {
        start: [1, 0],
        "lead-in": [["swing + lean", "max(2, floor(rise / 2))"]],
        repeat: [
          ["-(swing - lean)", "rise"],
          ["swing + lean", "2 * rise"],
        ],
      },
    },
    order: ["line"],
    ...someEase(dice),
    ...(dice.chance(50) && { rules: ["swing <= 2 * rise"] }),
  };
  return { entry, repeatRows: 10, reach: 7 };
}

/** Two arms that nod towards the centre and out again without crossing. */
function nodding(dice: Dice): Omit<RandomMotif, "kind" | "name"> {
  const entry: CordEntry = {
    kind: "cord",
    quantities: {
      interval: quantity(dice, "rows", 2, 6),
      spread: quantity(dice, "needles", 3, 7),
      dip: quantity(dice, "rows", 2, 5),
    },
    lead: "interval",
    repeat: "dip + interval",
    strands: {
      near: {
        start: [-1, 0],
        "lead-in": [["-spread", "interval"]],
        repeat: [
          ["-ceil(spread / 2)", "dip"],
          ["-spread", "dip + interval"],
        ],
      },
      far: {
        start: [1, 0],
        "lead-in": [["spread", "interval"]],
        repeat: [
          ["ceil(spread / 2)", "dip"],
          ["spread", "dip + interval"],
        ],
      },
    },
    folded: ["near", "far"],
    order: ["far", "near"],
    ...someEase(dice),
    ...(dice.chance(40) && { rules: ["dip <= interval + 1", "spread >= dip"] }),
  };
  return { entry, repeatRows: 8, reach: 5 };
}

/** One strand on one side of the centre only, with nothing before its first repeat. */
function reaching(dice: Dice): Omit<RandomMotif, "kind" | "name"> {
  const entry: CordEntry = {
    kind: "cord",
    quantities: {
      interval: quantity(dice, "rows", 2, 6),
      far: quantity(dice, "needles", 3, 8),
    },
    lead: 0,
    repeat: "2 * interval",
    strands: {
      vine: {
        start: [1, 0],
        repeat: [
          ["far", "interval"],
          [1, "2 * interval"],
        ],
      },
    },
    order: ["vine"],
    ...someEase(dice),
  };
  return { entry, repeatRows: 8, reach: 6 };
}

/** Three strands, two that cross and one that stays in the middle of its side. */
function threeAbreast(dice: Dice): Omit<RandomMotif, "kind" | "name"> {
  const post = dice.pick<"left" | "right">(["left", "right"]);
  const needle = post === "left" ? -1 : 1;
  const entry: CordEntry = {
    kind: "cord",
    quantities: {
      interval: { unit: "rows", ...(dice.chance(50) ? { allow: someOf(dice, 3, 6) } : choiceOf(dice, 3, 6)) },
      spread: quantity(dice, "needles", 3, 6),
    },
    lead: "interval",
    repeat: "2 * interval",
    strands: {
      outer: {
        start: [-2, 0],
        "lead-in": [["-spread", "interval"]],
        repeat: [
          ["spread", "interval"],
          ["-spread", "interval * 2"],
        ],
      },
      middle: {
        start: [needle, 0],
        "lead-in": [[needle, "interval"]],
        repeat: [[needle, "2 * interval"]],
      },
      inner: {
        start: [2, 0],
        "lead-in": [["spread", "interval"]],
        repeat: [
          ["-spread", "interval"],
          ["spread", "interval + interval"],
        ],
      },
    },
    folded: ["outer", "inner"],
    order: ["outer", "middle", "inner"],
    ...someEase(dice),
  };
  return { entry, repeatRows: 9, reach: 5 };
}
