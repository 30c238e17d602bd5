import { expect, test } from "vitest";
import { guideSchema } from "../build/guide/guide-schema.ts";
import { DAY_STATES } from "../build/model/phase.ts";
import { guideFixture } from "./guide-fixture.ts";

test("the guide used by other tests is a guide by the published schema", () => {
  expect(guideSchema.safeParse(guideFixture()).error?.issues).toBeUndefined();
});

test("the guide used by other tests holds a lake in every state", () => {
  const states = new Set(guideFixture().lakes.map(({ now }) => now.state));
  expect([...states].sort()).toEqual([...DAY_STATES].sort());
});
