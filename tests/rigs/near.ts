import { expect } from "vitest";

/** Fails unless `found` is within `tolerance`, a share of `published`, of it. */
export function expectNear(found: number, published: number, tolerance: number): void {
  expect(Math.abs(found / published - 1), `found ${found}, published ${published}`).toBeLessThanOrEqual(
    tolerance,
  );
}

/** Fails unless the two differ by no more than `tolerance`, in their own unit. */
export function expectWithin(found: number, published: number, tolerance: number): void {
  expect(Math.abs(found - published), `found ${found}, published ${published}`).toBeLessThanOrEqual(
    tolerance,
  );
}
