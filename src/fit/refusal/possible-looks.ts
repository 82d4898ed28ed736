import type { Garment } from "../../garment/garment.ts";
import type { Motif } from "../../motif/motif.ts";
import { distinctSegments, type Segment } from "../../motif/segments.ts";
import type { Trace, Values } from "../../motif/trace.ts";
import { isProblem, traceMotif } from "../../motif/trace-motif.ts";
import { goOn } from "../allowance.ts";
import { type Footing, footingOf } from "../footing.ts";
import { countings, valuesOf } from "../looks.ts";
import { countLimits } from "../steady/counts.ts";

/**
 * Whether some look of a motif keeps the motif's own rules and stands on a footing that will do.
 *
 * @param couldDo asked first, and `willDo` last, once the look's cord can be counted: the one is cheap, the other is not
 */
export type SomeLook = (
  garment: Garment,
  motif: Motif,
  couldDo: (footing: Footing) => boolean,
  willDo?: (footing: Footing) => boolean,
) => boolean;

/** What a motif is for one set of values, whatever its rules and its ease allow. */
interface Outlined {
  readonly footing: Footing;
  readonly trace: Trace;
  /** Worked out when they are first asked for. */
  segments?: readonly Segment[];
}

/**
 * Looks as far as it matters whether there are any: how the cord is counted is not settled, nor what it costs. What a
 * motif is for one set of values is worked out once.
 */
export function createSomeLook(): SomeLook {
  // Motifs whose rules alone differ have one and the same expression for a repeat.
  const known = new WeakMap<Motif["repeat"], Map<string, Outlined | undefined>>();
  const outlined = (motif: Motif, values: Values): Outlined | undefined => {
    const ofMotif = known.get(motif.repeat) ?? new Map<string, Outlined | undefined>();
    known.set(motif.repeat, ofMotif);
    const key = [...values.values()].join();
    if (!ofMotif.has(key)) {
      const trace = traceMotif(motif, values);
      ofMotif.set(key, isProblem(trace) ? undefined : { trace, footing: footingOf(trace) });
    }
    return ofMotif.get(key);
  };
  return (garment, motif, couldDo, willDo = () => true) => {
    const limits = countLimits(garment, motif.name);
    // Each segment is counted by itself, so it is enough that each one can be.
    const isCountable = (look: Outlined): boolean => {
      if (motif.kind !== "cord") return true;
      look.segments ??= distinctSegments(look.trace);
      return look.segments.every(
        (segment) => countings(motif, [segment], garment.gauge, 1, limits).length > 0,
      );
    };
    return valuesOf(motif).some((values) => {
      goOn();
      const look = outlined(motif, values);
      return look !== undefined && couldDo(look.footing) && isCountable(look) && willDo(look.footing);
    });
  };
}
