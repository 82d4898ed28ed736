import { describe, expect, it } from "vitest";
import { stateFolder } from "../../../src/state/folder.ts";

describe("stateFolder", () => {
  it("lies where the environment says", () => {
    expect(stateFolder({ XDG_STATE_HOME: "/var/keep" }, "/home/ina")).toBe("/var/keep/evenrow");
  });

  it.each([undefined, "", "relative/path"])(
    "lies in the home folder where the environment says %j",
    (stated) => {
      expect(stateFolder({ XDG_STATE_HOME: stated }, "/home/ina")).toBe("/home/ina/.local/state/evenrow");
    },
  );
});
