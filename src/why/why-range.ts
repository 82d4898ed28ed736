import type { Engine } from "../../solver/program.ts";
import { applyEdits } from "../explore/apply-edits.ts";
import type { Edit } from "../explore/edit.ts";
import { readSource } from "../explore/read-source.ts";
import { writtenAt } from "../explore/written-value.ts";
import { duringAll, WorkEnded } from "../fit/allowance.ts";
import type { SizeRange } from "../garment/garment.ts";
import { fitRange } from "../grading/fit-range.ts";
import { quantitiesToLeaveOut } from "../grading/leaving-out.ts";
import type { RangeDoesNotFit, RangeFits } from "../grading/range-result.ts";
import { TAKEN_OUT_COST } from "./ways.ts";
import { Ended, type Pace, type Questioned, type WhyNot, type WhySo, whyNot, whySo } from "./why.ts";

/** A file with sizes that is asked about, all of them together. */
export interface QuestionedRange extends Omit<Questioned, "garment"> {
  readonly range: SizeRange;
}

/** What is found out of one size. */
export interface WhySize<Found> {
  readonly size: string;
  readonly why: Found;
}

/** Not to share something, made in the file's own text; every size fits then. */
export interface LeftOut {
  readonly quantities: readonly string[];
  readonly edits: readonly Edit[];
  readonly cost: number;
}

/** Sizes that do not fit by themselves, or which fit, but not together. */
export interface WhyNotRange {
  readonly status: "does not fit";
  readonly result: RangeDoesNotFit;
  /** Of those that do not fit by themselves, in the order of the file. */
  readonly sizes: readonly WhySize<WhyNot>[];
  /** What not to share, so that all of them fit; only where each fits by itself. */
  readonly leftOut: readonly LeftOut[];
  readonly complete: boolean;
}

/** The rules that bind the sizes that give up most. */
export interface WhySoRange {
  readonly status: "fits";
  readonly title: string;
  readonly sizes: readonly WhySize<WhySo>[];
  /** The sizes that were not asked about. */
  readonly others: readonly string[];
  readonly complete: boolean;
}

/** How many sizes of those that fit are asked about: a step is solved for all sizes each time. */
const mostAsked = 3;

/** The rules that bind the sizes that give up most, each as it is within all. Where it is ended early, those found so far. */
export async function whySoRange(
  { range, ...file }: QuestionedRange,
  result: RangeFits,
  engine: Engine,
  pace: Pace,
): Promise<WhySoRange> {
  const asked = [...result.sizes].sort((a, b) => b.fit.cost - a.fit.cost).slice(0, mostAsked);
  const sizes: WhySize<WhySo>[] = [];
  for (const { name: size, fit } of asked) {
    const garment = garmentOf(range, size);
    const why = await whySo({ ...file, garment, beside: { ...file.beside, size } }, fit, engine, pace);
    sizes.push({ size, why });
    if (!why.complete) break;
  }
  return {
    status: "fits",
    title: range.title,
    sizes,
    others: range.sizes.flatMap(({ name }) => (sizes.some(({ size }) => size === name) ? [] : [name])),
    complete: result.proven && sizes.every(({ why }) => why.complete),
  };
}

/** What keeps sizes from fitting, and what instead. Where it is ended early, what was found so far. */
export async function whyNotRange(
  file: QuestionedRange,
  result: RangeDoesNotFit,
  engine: Engine,
  pace: Pace,
): Promise<WhyNotRange> {
  if (result.misfits.length === 0) return { ...(await notTogether(file, engine, pace)), result };
  const { range, ...rest } = file;
  const sizes: WhySize<WhyNot>[] = [];
  for (const size of result.misfits) {
    const garment = garmentOf(range, size);
    const why = await whyNot({ ...rest, garment, beside: { ...file.beside, size } }, engine, {
      ...pace,
      goOn: (words) => pace.goOn(`${size}: ${words}`),
    });
    sizes.push({ size, why });
    if (!why.complete) break;
  }
  return {
    status: "does not fit",
    result,
    sizes,
    leftOut: [],
    complete: sizes.every(({ why }) => why.complete),
  };
}

const garmentOf = ({ sizes }: SizeRange, size: string) => sizes.find(({ name }) => name === size)!.garment;

async function notTogether(
  { range: { share }, source, name, beside }: QuestionedRange,
  engine: Engine,
  pace: Pace,
): Promise<Omit<WhyNotRange, "result">> {
  const leftOut: LeftOut[] = [];
  const found = (complete: boolean) => ({ status: "does not fit", sizes: [], leftOut, complete }) as const;
  if (!share) return found(true);
  const written = writtenAt(source, share.path);
  const shared = Array.isArray(written) ? written.map(String) : [String(written)];
  const fitsWithout = async (quantities: readonly string[]): Promise<boolean> => {
    await pace.goOn("Leaving out what is shared");
    const left = shared.filter((one) => !quantities.includes(one));
    const edit: Edit =
      left.length > 0 ? { path: share.path, value: left } : { path: share.path, remove: true };
    const edited = applyEdits(source, [edit]);
    const range = "text" in edited ? readSource(edited.text, name, beside).range : undefined;
    if (!range) return false;
    const result = await fitRange(range, engine, { rivals: 0, advice: false, timeLimitMs: pace.leftMs() });
    if (result.status === "stopped") throw new Ended();
    if (result.status === "fits")
      leftOut.push({ quantities, edits: [edit], cost: TAKEN_OUT_COST * quantities.length });
    return result.status === "fits";
  };
  try {
    await duringAll(Math.max(1, pace.leftMs()), () =>
      quantitiesToLeaveOut([...new Set(shared)], fitsWithout),
    );
    return found(true);
  } catch (error) {
    if (error instanceof Ended || error instanceof WorkEnded) return found(false);
    throw error;
  }
}
