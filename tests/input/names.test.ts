import { expect, test } from "vitest";
import { didYouMean } from "../../build/input/names.ts";

test.each([
  ["two letters swapped", "depht", ["name", "depth", "area"], "depth"],
  ["one letter wrong", "deptj", ["name", "depth"], "depth"],
  ["another case and a hyphen", "Ice-Off", ["iceOff", "turnover"], "iceOff"],
  ["of two as near, the one that begins alike", "of", ["on", "part", "off"], "off"],
  ["nothing near", "boat", ["name", "depth"], undefined],
])("%s: %s", (_, word, known, meant) => {
  expect(didYouMean(word, known)).toBe(meant);
});
