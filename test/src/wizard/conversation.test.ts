import { describe, expect, it } from "vitest";
import {
  begun,
  currentQuestion,
  progress,
  reply,
  suggestion,
  withSuggestions,
} from "../../../src/wizard/conversation.ts";
import { typed } from "./support.ts";

describe("a conversation", () => {
  it("takes what is suggested for an empty line", () => {
    const { conversation, outcome } = reply(begun, "   ");
    expect(outcome).toMatchObject({ kind: "accepted", answer: "My garment" });
    expect(currentQuestion(conversation)?.id).toBe("stitches");
  });

  it("stays at a question whose answer is refused", () => {
    const asked = typed(["a"]);
    const { conversation, outcome } = reply(asked, "28,5");
    expect(outcome).toEqual({
      kind: "refused",
      problem: "the number of stitches: decimals are written with a point",
      right: "28.5",
    });
    expect(conversation).toBe(asked);
  });

  it("explains a question and stays at it", () => {
    const { conversation, outcome } = reply(begun, "?");
    expect(outcome).toMatchObject({ kind: "explained", question: { id: "title" } });
    expect(conversation).toBe(begun);
  });

  it("goes back, and suggests what was answered before", () => {
    const back = typed(["a", "30", "42", "back", "back"]);
    expect(back.answers).toEqual({ title: "a" });
    expect(suggestion(back, currentQuestion(back)!)).toBe("30");
    expect(typed(["", ""], back).answers).toEqual({ title: "a", stitches: "30", rows: "42" });
  });

  it("suggests anew where an earlier answer is not right any more", () => {
    const back = typed(["a", "30", "42", "back", "back", "300"]);
    expect(suggestion(back, currentQuestion(back)!)).toBe("420");
  });

  it("does not go back beyond the first question", () => {
    expect(reply(begun, "back")).toEqual({ conversation: begun, outcome: { kind: "back", moved: false } });
  });

  it("goes back from behind the last question", () => {
    const all = { answers: withSuggestions(begun), earlier: {} };
    expect(currentQuestion(all)).toBeUndefined();
    expect(currentQuestion(typed(["back"], all))?.id).toBe("yarn");
  });

  it("asks other questions once another ornament is answered, and keeps nothing of the first", () => {
    const cord = typed(["", "", "", "", "", "", "cord", "3", "20"]);
    const cable = typed(["back", "back", "back", "cable"], cord);
    expect(currentQuestion(cable)?.id).toBe("cross");
    expect(Object.keys(withSuggestions(cable))).not.toContain("cord stitches");
  });

  it("stops at quit", () => {
    expect(reply(begun, "quit").outcome).toEqual({ kind: "quit" });
  });

  it("counts the questions that are still to come", () => {
    expect(progress(begun)).toEqual({ number: 1, total: 26 });
    expect(progress(typed(["", "", "", "", "", "", "cable"]))).toEqual({ number: 8, total: 24 });
  });
});
