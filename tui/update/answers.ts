import type { Answer } from "../../src/explore/answer.ts";
import type { Next, SolveNews } from "../message.ts";
import type { OpenGarment, Solving, State } from "../state.ts";
import { heardWhy, isAboutWhy } from "./asking-why.ts";
import { next, withGarment } from "./next.ts";

/** What the solver tells; whatever is not about the newest request is stale and is dropped. */
export function heard(state: State, message: SolveNews): Next {
  if (isAboutWhy(state, message)) return heardWhy(state, message);
  if (message.sequence !== state.garment?.solving.sequence) return next(state);
  switch (message.kind) {
    case "progress":
      return next(withSolving(state, () => ({ reached: message.reached })));
    case "answer":
      return next(withGarment(state, (garment) => answered(garment, message.answer)));
    case "step":
      return next(
        withSolving(state, ({ steps }) => ({
          steps: [...steps, message.outcome],
        })),
      );
    case "all tried":
      return next(withSolving(state, () => ({ allTried: true })));
    case "why":
      return next(state);
    case "conflict":
      return next(
        withSolving(state, () => ({ outcome: { kind: "does not fit", conflict: message.conflict } })),
      );
  }
}

const withSolving = (state: State, change: (solving: Solving) => Partial<Solving>): State =>
  withGarment(state, (garment) => ({
    ...garment,
    solving: { ...garment.solving, ...change(garment.solving) },
  }));

function answered(garment: OpenGarment, answer: Answer): OpenGarment {
  const { reached: _, ...before } = garment.solving;
  const solving = { ...before, underWay: false };
  if (answer.kind === "failed")
    return { ...garment, solving: { ...solving, outcome: { kind: "failed", reason: answer.reason } } };
  const { result } = answer;
  switch (result.status) {
    case "fits":
      return {
        ...garment,
        solving: { ...solving, shown: result, current: true, outcome: { kind: "fits" } },
        view: { ...garment.view, choice: 0 },
      };
    case "does not fit":
      return { ...garment, solving: { ...solving, outcome: { kind: "does not fit" } } };
    case "stopped":
      return { ...garment, solving: { ...solving, outcome: { kind: "stopped", reason: result.reason } } };
  }
}
