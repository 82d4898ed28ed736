import type { Answer } from "../../src/explore/answer.ts";
import type { Message, Next } from "../message.ts";
import type { OpenGarment, Solving, State } from "../state.ts";
import { next, withGarment } from "./next.ts";

type AnswerMessage = Extract<Message, { readonly sequence: number }>;

/** What the solver tells; whatever is not about the newest request is stale and is dropped. */
export function heard(state: State, message: AnswerMessage): Next {
  if (message.sequence !== state.garment?.solving.sequence) return next(state);
  switch (message.kind) {
    case "answered":
      return next(withGarment(state, (garment) => answered(garment, message.answer)));
    case "step tried":
      return next(
        withSolving(state, ({ steps }) => ({
          steps: [...steps, message.outcome],
        })),
      );
    case "all tried":
      return next(withSolving(state, () => ({ allTried: true })));
  }
}

const withSolving = (state: State, change: (solving: Solving) => Partial<Solving>): State =>
  withGarment(state, (garment) => ({
    ...garment,
    solving: { ...garment.solving, ...change(garment.solving) },
  }));

function answered(garment: OpenGarment, answer: Answer): OpenGarment {
  const solving = { ...garment.solving, underWay: false };
  if (answer.kind === "failed")
    return { ...garment, solving: { ...solving, outcome: { kind: "failed", reason: answer.reason } } };
  const { result, conflict } = answer;
  switch (result.status) {
    case "fits":
      return {
        ...garment,
        solving: { ...solving, shown: result, current: true, outcome: { kind: "fits" } },
        view: { ...garment.view, choice: 0 },
      };
    case "does not fit":
      return { ...garment, solving: { ...solving, outcome: { kind: "does not fit", conflict } } };
    case "stopped":
      return { ...garment, solving: { ...solving, outcome: { kind: "stopped", reason: result.reason } } };
  }
}
