import { describe, expect, it } from "vitest";
import { parsePercentage } from "../../../src/units/percentage.ts";

describe("parsePercentage", () => {
  it.each<[string, number]>([
    ["2 %", 0.02],
    ["2%", 0.02],
    [" 15 % ", 0.15],
    ["-5 %", -0.05],
    ["- 5 %", -0.05],
    ["2.5 %", 0.025],
    ["1/2 %", 0.005],
    ["0 %", 0],
  ])("%s is %d", (text, fraction) => {
    expect(parsePercentage(text)).toEqual({ fraction });
  });

  it.each<[text: string, code: string, expected: string]>([
    ["2", "missing-percent", "2 %"],
    ["-5", "missing-percent", "-5 %"],
    ["1,5 %", "decimal-comma", "1.5 %"],
    ["1,5", "decimal-comma", "1.5 %"],
    ["2 %%", "not-a-percentage", "a percentage such as 2 %"],
    ["%", "not-a-percentage", "a percentage such as 2 %"],
    ["two %", "not-a-percentage", "a percentage such as 2 %"],
    ["2 cm", "not-a-percentage", "a percentage such as 2 %"],
    ["1/0 %", "not-a-percentage", "a percentage such as 2 %"],
    ["5 % 2", "not-a-percentage", "a percentage such as 2 %"],
    ["1e3 %", "not-a-percentage", "a percentage such as 2 %"],
    [`${"1".repeat(60)} %`, "not-a-percentage", "a percentage such as 2 %"],
    ["", "not-a-percentage", "a percentage such as 2 %"],
  ])("%s is refused", (text, code, expected) => {
    expect(parsePercentage(text)).toMatchObject({ problem: { code, expected } });
  });
});
