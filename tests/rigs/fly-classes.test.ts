import { expect, test } from "vitest";
import { flyClassOf } from "../../build/rigs/fly-classes.ts";

/** The bounds are the rig model's own, from memory: under 0.06 g unweighted, from 0.3 g a leech. */
test.each([
  [undefined, "unweighted"],
  [0.059, "unweighted"],
  [0.06, "beaded pupa"],
  [0.299, "beaded pupa"],
  [0.3, "balanced leech"],
  [2, "balanced leech"],
])("a fly of %s g counts as %s", (mass_g, name) =>
  expect(flyClassOf(mass_g === undefined ? {} : { mass_g })).toBe(name),
);
