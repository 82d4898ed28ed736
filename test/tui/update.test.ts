import { describe, expect, test } from "vitest";
import type { FittedPlacement } from "../../src/fit/fit.ts";
import { frame } from "../../tui/content/frame.ts";
import { asciiGlyphs } from "../../tui/content/glyphs.ts";
import { spokenLines } from "../../tui/content/spoken.ts";
import { nowHeldBack } from "../../tui/content/steps-pane.ts";
import { keyTable } from "../../tui/keys.ts";
import { isChanged, ruleAt } from "../../tui/state.ts";
import { answerTo, type Driver, driver, opened, sample } from "./support/driver.ts";

const atRule = (program: Driver, name: string): void => {
  program.press("/");
  program.type(name);
  program.press("enter");
  expect(ruleAt(program.garment())?.name).toBe(name);
};

describe("moving about", () => {
  test("arrows and letters go from rule to rule and from field to field, and stop at the ends", async () => {
    const program = await opened("sleeve");
    const where = (): readonly unknown[] => [ruleAt(program.garment())?.name, program.garment().view.field];
    expect(where()).toEqual(["interval", "from"]);
    program.press("up");
    expect(where()).toEqual(["interval", "from"]);
    program.press("j", "l", "right");
    expect(where()).toEqual(["spread", "prefer"]);
    program.press("l", "l", "l");
    expect(where()).toEqual(["spread", "weight"]);
    program.press("k", "h");
    expect(where()).toEqual(["interval", "prefer"]);
    program.press("end");
    expect(where()).toEqual(["needles", "to"]);
    program.press("home");
    expect(where()).toEqual(["interval", "to"]);
  });

  test("Tab goes round the parts of the screen, Shift-Tab the other way", async () => {
    const program = await opened("sleeve");
    const panes = ["tab", "tab", "tab", "shift-tab"].map((key) => {
      program.press(key);
      return program.garment().view.pane;
    });
    expect(panes).toEqual(["choices", "drawing", "rules", "drawing"]);
  });

  test("a rule is found by its name while it is typed, and Esc goes back to where one was", async () => {
    const program = await opened("sleeve");
    program.press("/");
    program.type("gro");
    expect(ruleAt(program.garment())?.name).toBe("grow");
    program.press("escape");
    expect(ruleAt(program.garment())?.name).toBe("interval");
    program.press("/");
    program.type("gr0");
    expect(program.state().message).toEqual({ kind: "refused", words: 'No rule is called "gr0".' });
    program.press("backspace", "backspace", "backspace");
    program.type("top");
    program.press("enter");
    expect(program.state().screen.kind).toBe("main");
    expect(ruleAt(program.garment())?.name).toBe("top margin");
  });

  test("the drawing is drawn larger, scrolled within itself, and whole again", async () => {
    const program = await opened("sleeve");
    program.press("tab", "tab", "down");
    expect(program.state().message?.words).toBe("The whole piece is in view; z draws it larger.");
    program.press("z", "up", "left", ...Array<string>(30).fill("up"));
    expect(program.garment().view).toMatchObject({ zoom: 1, scroll: { across: -1, up: 4 } });
    program.press("x");
    expect(program.garment().view).toMatchObject({ zoom: 0, scroll: { across: 0, up: 0 } });
    program.press("x");
    expect(program.state().message?.words).toBe("The whole piece is in view already.");
  });
});

describe("changing rules", () => {
  test("one step at either end changes the file's text there and nowhere else, and asks for the fit", async () => {
    const program = await opened("sleeve");
    atRule(program, "spread");
    program.press("right", "+");
    expect(program.text()).toBe(sample("sleeve").replace("allow: 2..9", "allow: 2..10"));
    expect(program.effects.slice(-2)).toEqual([
      {
        kind: "solve",
        sequence: 2,
        source: program.text(),
        name: "sleeve.yaml",
        first: "motifs.plait.spread",
      },
      { kind: "keep", file: "sleeve.yaml", base: sample("sleeve"), text: program.text() },
    ]);
    program.press("-", "left", "+", "+");
    expect(program.text()).toBe(sample("sleeve").replace("allow: 2..9", "allow: 4..9"));
  });

  test("a value is typed; a wrong one says what can be typed, and typing goes on", async () => {
    const program = await opened("sleeve");
    atRule(program, "interval");
    program.press("enter", "ctrl-u");
    program.type("2,4 rows");
    program.press("enter");
    expect(program.state().screen.kind).toBe("typing");
    expect(program.state().message?.words).toContain("Type a number such as 4");
    program.press("ctrl-u");
    program.type("3..5");
    program.press("enter");
    expect(program.state().screen.kind).toBe("main");
    expect(program.text()).toContain("interval: { allow: 3..5, prefer: 4 }");
  });

  test("preference and weight are stepped and typed, and taken out by typing nothing", async () => {
    const program = await opened("sleeve");
    atRule(program, "interval");
    program.press("right", "right", "+");
    expect(program.text()).toContain("prefer: 5");
    program.press("enter", "ctrl-u", "enter");
    expect(program.text()).toContain("interval: { allow: [2, 4, 6, 8] }");
    program.press("right", "-");
    expect(program.text()).toContain("interval: 1,");
    program.press("enter", "ctrl-u", "enter");
    expect(program.text()).toContain("weights: { length: 3, balance: 0.5, ease: 1, spread: 1.2 }");
    expect(ruleAt(program.garment())?.weight?.value).toBe(1.5);
  });

  test("a change that would leave the file wrong is refused and changes nothing", async () => {
    const program = await opened("sleeve");
    atRule(program, "needles");
    program.press("enter", "ctrl-u");
    program.type("20");
    program.press("enter");
    expect(program.state().message?.kind).toBe("refused");
    expect(program.state().message?.words).toContain("That cannot be");
    expect(program.text()).toBe(sample("sleeve"));
  });

  test("a rule is held fast at what the fit chose, and let go to what it allowed", async () => {
    const program = await opened("sleeve");
    atRule(program, "repeats");
    program.press("space");
    expect(program.text()).toContain("repeats: { allow: 8 }");
    program.press("space");
    expect(program.text()).toBe(sample("sleeve"));
    atRule(program, "columns");
    program.press("space");
    expect(program.state().message?.words).toContain("The file allows this one value and no other");
    atRule(program, "side margin");
    program.press("space");
    expect(program.state().message?.words).toContain("is a limit, not a choice");
  });

  test("a search that takes long is shown, and is ended by a key while it lasts", async () => {
    const program = await opened("sleeve");
    program.press("e");
    expect(program.state().message?.words).toBe("Nothing is being sought.");
    atRule(program, "spread");
    program.press("right", "+");
    const { sequence } = program.state();
    const reached = { phase: "Best fit", elapsedMs: 4000, progress: { nodes: 12, bound: 1.5, best: 4.25 } };
    program.send({ kind: "progress", sequence: sequence - 1, reached });
    expect(nowHeldBack(program.garment())).not.toContain("Best fit");
    program.send({ kind: "progress", sequence, reached });
    expect(nowHeldBack(program.garment())).toContain(
      "Best fit: 4 s, 12 nodes, best so far 4.250, none below 1.500. End the search with the best so far: e.",
    );
    program.press("e");
    expect(program.effects.at(-1)).toEqual({ kind: "end search", sequence });
    await program.solve();
    expect(program.garment().solving).not.toHaveProperty("reached");
  });

  test("a save tells that a held rule's range is lost with the screen, as the question before leaving does", async () => {
    const program = await opened("sleeve");
    program.press("space");
    program.send({ kind: "saved", text: program.text() });
    const saved = program.state().message!.words;
    expect(saved).toContain(
      "Saved; 1 rule is held at one value now. Until you leave, a gives its range back.",
    );
    expect(saved.length).toBeLessThanOrEqual(80);
    program.press("q");
    expect(program.effects.at(-1)).toEqual({ kind: "quit" });
    const again = await opened("sleeve");
    again.press("space", "q");
    expect(spokenLines(again.state()).join(" ")).toContain("1 rule is held at one value; once you leave");
    const changed = await opened("sleeve");
    changed.press("space", "space");
    changed.send({ kind: "saved", text: changed.text() });
    expect(changed.state().message!.words).toMatch(/^Saved .*sleeve\.yaml\.$/);
  });

  test("nothing is held fast at a value that is not of the garment as it is now", async () => {
    const program = await opened("sleeve");
    atRule(program, "spread");
    program.press("right", "+", "space");
    expect(program.state().message?.words).toContain("still being sought");
    await program.solve();
    program.press("space");
    expect(program.text()).toContain("spread: { allow: 3, prefer: 3 }");
  });
});

/** A placement as it is worked; what its motif allows is narrower once a rival's choices are held. */
const apartFromRules = ({ sections, ...placement }: FittedPlacement): object => ({
  ...placement,
  sections: sections.map(({ look, ...section }) => ({ ...section, values: [...look.values] })),
});

describe("choices", () => {
  test.each(["cable-sleeve", "front", "scarf", "sleeve"])(
    "each rival of %s that is taken as the new start becomes the best fit",
    async (name) => {
      const program = await opened(name);
      const rivals = program.garment().solving.shown!.rivals;
      expect(rivals.length).toBeGreaterThan(0);
      for (const [index, rival] of rivals.entries()) {
        program.press("escape", "tab", ...Array<string>(index + 1).fill("down"), "enter");
        expect(program.state().message?.words).toContain("This fit is the new start");
        await program.solve();
        const { fit } = program.garment().solving.shown!;
        expect(fit.looks.map(({ values }) => [...values])).toEqual(
          rival.looks.map(({ values }) => [...values]),
        );
        expect(fit.looks.map(({ segments }) => segments.map(({ pickup }) => pickup))).toEqual(
          rival.looks.map(({ segments }) => segments.map(({ pickup }) => pickup)),
        );
        expect(fit.placements.map(apartFromRules)).toEqual(rival.placements.map(apartFromRules));
        program.press("escape", "a");
        program.press("u", "u");
        expect(program.text()).toBe(sample(name));
        await program.solve();
      }
    },
  );

  test("the best fit cannot be taken, and says so", async () => {
    const program = await opened("sleeve");
    program.press("tab", "enter");
    expect(program.state().message).toEqual({
      kind: "refused",
      words: "This is the best fit already; choose one of its rivals below it.",
    });
  });

  test("two fits stand side by side, and each rival in turn", async () => {
    const program = await opened("sleeve");
    program.press("c", "down", "down");
    expect(program.state().screen).toEqual({ kind: "compare", rival: 3 });
    program.press("up", "q");
    expect(program.state().screen).toEqual({ kind: "main" });
  });
});

describe("answers", () => {
  test("a stale answer is dropped, and what is shown is marked as of before until the newest comes", async () => {
    const program = await opened("sleeve");
    const before = program.garment().solving.shown;
    atRule(program, "interval");
    program.press("+");
    const late = await answerTo(program.text());
    program.press("+");
    program.send({ kind: "answer", sequence: 2, answer: late });
    expect(program.garment().solving).toMatchObject({ underWay: true, current: false });
    expect(program.garment().solving.shown).toBe(before);
    await program.solve();
    expect(program.garment().solving).toMatchObject({ underWay: false, current: true });
  });

  test("where nothing fits the last fit stays, marked, and the rules that fail to meet are told", async () => {
    const program = await opened("sleeve");
    const before = program.garment().solving.shown;
    atRule(program, "side margin");
    program.press("enter", "ctrl-u");
    program.type("40");
    program.press("enter");
    await program.solve();
    expect(program.garment().solving).toMatchObject({ current: false, outcome: { kind: "does not fit" } });
    expect(program.garment().solving.shown).toBe(before);
    const conflict = [{ rule: "place.0.margins.side", words: "at least 40 needles at each side" }];
    program.send({ kind: "conflict", sequence: program.state().sequence, conflict });
    expect(program.garment().solving.outcome).toEqual({ kind: "does not fit", conflict });
    program.press("u");
    await program.solve();
    expect(program.garment().solving.outcome).toEqual({ kind: "fits" });
  });

  test("a fault of the solver is told, and nothing of it is shown as a fit", async () => {
    const program = await opened("sleeve");
    atRule(program, "interval");
    program.press("+");
    program.send({ kind: "answer", sequence: 2, answer: { kind: "failed", reason: "it broke" } });
    expect(program.garment().solving).toMatchObject({
      underWay: false,
      current: false,
      outcome: { kind: "failed", reason: "it broke" },
    });
  });
});

describe("saving and leaving", () => {
  test("what was saved is saved; what was changed meanwhile is not", async () => {
    const program = await opened("sleeve");
    program.press("s");
    expect(program.state().message?.words).toBe("Nothing was changed since the last save.");
    atRule(program, "spread");
    program.press("+", "s");
    const saved = program.text();
    expect(program.effects.at(-1)).toEqual({
      kind: "save",
      file: "sleeve.yaml",
      text: saved,
      base: sample("sleeve"),
    });
    program.press("+");
    program.send({ kind: "saved", text: saved });
    expect(isChanged(program.garment())).toBe(true);
    expect(program.effects.filter(({ kind }) => kind === "forget kept")).toEqual([]);
    program.press("u");
    expect(isChanged(program.garment())).toBe(false);
    expect(program.effects.at(-1)).toEqual({ kind: "forget kept", file: "sleeve.yaml" });
  });

  test("a file that changed on disk is never written over unasked; both ways are offered", async () => {
    const theirs = sample("sleeve").replace("crossed cord\n", "braided cord\n");
    const conflicting = async (): Promise<Driver> => {
      const program = await opened("sleeve");
      atRule(program, "spread");
      program.press("+", "s");
      program.send({ kind: "changed on disk", theirs });
      expect(program.state().screen.kind).toBe("ask conflict");
      return program;
    };
    const mine = await conflicting();
    mine.press("m");
    expect(mine.effects.at(-1)).toMatchObject({ kind: "save", text: mine.text(), base: theirs });
    const taken = await conflicting();
    const own = taken.text();
    taken.press("t");
    expect(taken.text()).toBe(theirs);
    expect(isChanged(taken.garment())).toBe(false);
    taken.press("u");
    expect(taken.text()).toBe(own);
    const neither = await conflicting();
    neither.press("escape");
    expect(neither.state().screen.kind).toBe("main");
    expect(isChanged(neither.garment())).toBe(true);
  });

  test("quitting asks only where something is not saved", async () => {
    const clean = await opened("sleeve");
    clean.press("q");
    expect(clean.effects.at(-1)).toEqual({ kind: "quit" });
    const program = await opened("sleeve");
    atRule(program, "spread");
    program.press("+", "q");
    expect(program.state().screen.kind).toBe("ask quit");
    program.press("escape", "q", "s");
    program.send({ kind: "saved", text: program.text() });
    expect(program.effects.slice(-2)).toEqual([
      { kind: "forget kept", file: "sleeve.yaml" },
      { kind: "quit" },
    ]);
  });

  test("Ctrl-C leaves at once from every screen and forgets nothing that was kept", async () => {
    for (const keys of [[], ["?"], ["/"], ["enter"], ["c"], ["v"], ["q"]]) {
      const program = await opened("sleeve");
      program.press("right", "+", ...keys, "ctrl-c");
      expect(program.effects.at(-1)).toEqual({ kind: "quit" });
      expect(program.effects.filter(({ kind }) => kind === "forget kept")).toEqual([]);
    }
  });

  test("changes that an earlier run did not save are offered, and taken up as changes that can be undone", async () => {
    const kept = sample("sleeve").replace("2..9", "2..12");
    const program = driver();
    program.send({
      kind: "opened",
      file: "sleeve.yaml",
      text: sample("sleeve"),
      unsaved: { text: kept, fileChanged: false },
    });
    expect(program.state().screen.kind).toBe("ask unsaved");
    program.press("enter");
    expect(program.text()).toBe(kept);
    expect(isChanged(program.garment())).toBe(true);
    program.press("u");
    expect(program.text()).toBe(sample("sleeve"));
  });

  test("they can be dropped", async () => {
    const program = driver();
    program.send({
      kind: "opened",
      file: "sleeve.yaml",
      text: sample("sleeve"),
      unsaved: { text: `${sample("sleeve")}# more\n`, fileChanged: true },
    });
    program.press("d");
    expect(program.effects.at(-1)).toEqual({ kind: "forget kept", file: "sleeve.yaml" });
    expect(program.text()).toBe(sample("sleeve"));
  });
});

describe("files", () => {
  test("without a file the shelf is offered and one of it opened", () => {
    const program = driver();
    program.send({
      kind: "shelf",
      entries: [
        { kind: "sample", file: "a.yaml", title: "A" },
        { kind: "new", file: "", title: "New" },
      ],
    });
    program.press("enter");
    expect(program.effects.at(-1)).toEqual({ kind: "open", file: "a.yaml" });
    program.send({ kind: "not opened", file: "a.yaml", reason: "there is no such file or folder" });
    expect(program.state().message?.words).toBe("a.yaml: there is no such file or folder.");
    program.press("down", "enter");
    expect(program.effects.at(-1)).toEqual({ kind: "new" });
  });

  test("a file with mistakes is shown with them, and read again once it is put right", () => {
    const program = driver();
    const wrong = sample("sleeve").replace("width: 20 cm", "width: 20");
    program.send({ kind: "opened", file: "sleeve.yaml", text: wrong });
    expect(program.state().screen.kind).toBe("mistakes");
    expect(program.garment().reading.diagnostics[0]?.place).toMatchObject({ line: 14 });
    program.press("r");
    expect(program.effects.at(-1)).toEqual({ kind: "open", file: "sleeve.yaml" });
    program.send({ kind: "opened", file: "sleeve.yaml", text: sample("sleeve") });
    expect(program.state().screen.kind).toBe("main");
  });
});

describe("keys", () => {
  test("a key that means nothing here says so, and where it means something else", async () => {
    const program = await opened("sleeve");
    program.press("r");
    expect(program.state().message?.words).toBe(
      "r (read the file again, once it is put right) cannot be used here; ? lists the keys.",
    );
    program.press("%");
    expect(program.state().message?.words).toBe("% does nothing; ? lists the keys.");
  });

  test("what is no key is told fit to print, and is no letter where something is typed", async () => {
    const program = await opened("sleeve");
    const said = (key: string): string | undefined => {
      program.press(key);
      return program.state().message?.words;
    };
    expect(said("\u001b[31m")).toBe("\\u001b[31m does nothing; ? lists the keys.");
    expect(said("constructor")).toBe("constructor does nothing; ? lists the keys.");
    expect(said("9".repeat(400))).toHaveLength(60 + " does nothing; ? lists the keys.".length);
    program.press("/", "\u0000", "\u202e", "a");
    expect(program.state().screen).toMatchObject({ kind: "finding", text: "a" });
  });

  test("the list of keys can be drawn in a terminal narrower than its indentation", async () => {
    const program = await opened("sleeve", 20, 24);
    program.press("?");
    expect(frame(program.state(), asciiGlyphs)).toHaveLength(23);
  });

  test("in no place does a key stand for two actions", () => {
    for (const place of new Set(keyTable.flatMap(({ places }) => places))) {
      const keys = keyTable.filter(({ places }) => places.includes(place)).flatMap((binding) => binding.keys);
      expect(new Set(keys).size, place).toBe(keys.length);
    }
  });

  test("Esc leaves every passing screen", async () => {
    for (const keys of [["?"], ["/"], ["enter"], ["c"], ["v"], ["q"], ["c", "?"], ["v", "?"]]) {
      const program = await opened("sleeve");
      program.press("right", "+");
      await program.solve();
      program.press(...keys);
      expect(program.state().screen.kind).not.toBe("main");
      program.press("escape", "escape");
      expect(program.state().screen.kind).toBe("main");
    }
  });
});
