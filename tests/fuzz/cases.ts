import fc from "fast-check";
import type { Shapes } from "./base-club.ts";
import { type Mutation, mildMutations, mutations } from "./mutations.ts";
import type { Depth } from "./one-case.ts";

/** A club made wrong, and how far it is taken. */
export interface Case {
  readonly changes: readonly Mutation[];
  readonly far: Depth;
  readonly shapes: Shapes;
}

/** Most clubs have no shapes: they are read five times faster. */
const shapes = fc.oneof(
  { arbitrary: fc.constant<Shapes>("none"), weight: 6 },
  { arbitrary: fc.constantFrom<Shapes>("plumbed", "drawn"), weight: 2 },
);
const caseOf = (changes: fc.Arbitrary<readonly Mutation[]>, far: Depth): fc.Arbitrary<Case> =>
  fc.record({ changes, far: fc.constant(far), shapes });

/** Of 200 clubs 180 are read and composed, 18 also drawn, 2 also published. `huge`: some of many megabytes. */
export const clubs = (huge: boolean): fc.Arbitrary<Case> =>
  fc.oneof(
    { arbitrary: caseOf(mutations(huge), "compose"), weight: 180 },
    { arbitrary: caseOf(mutations(huge), "pages"), weight: 6 },
    { arbitrary: caseOf(mildMutations, "pages"), weight: 12 },
    { arbitrary: caseOf(mutations(false), "build"), weight: 1 },
    { arbitrary: caseOf(mildMutations, "build"), weight: 1 },
  );
