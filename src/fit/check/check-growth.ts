import type { FittedPlacement } from "../fit.ts";
import { type Breach, breach } from "./breach.ts";

/** From section to section a quantity changes by no more than it may at once, and not at all where it may not. */
export function checkGrowth({ sections }: FittedPlacement, where: string): readonly Breach[] {
  return sections.slice(1).flatMap(({ look }, index) =>
    look.motif.quantities.flatMap(({ name, change = 0 }) => {
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
