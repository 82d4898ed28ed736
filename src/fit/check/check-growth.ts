import type { FittedPlacement } from "../fit.ts";
import { type Breach, breach } from "./breach.ts";

/** Of a motif that grows one quantity changes, by no more than it may at once, and nothing else. */
export function checkGrowth({ sections }: FittedPlacement, where: string): readonly Breach[] {
  const motif = sections[0]?.look.motif;
  if (!motif?.quantities.some(({ change }) => change !== undefined)) return [];
  return sections.slice(1).flatMap(({ look }, index) =>
    motif.quantities.flatMap(({ name, change = 0 }) => {
      const [before, now] = [sections[index]!.look.values.get(name)!, look.values.get(name)!];
      return Math.abs(now - before) <= change
        ? []
        : [
            breach(
              where,
              `${name} goes from ${before} to ${now} in section ${index + 2}, by more than ${change}`,
            ),
          ];
    }),
  );
}
