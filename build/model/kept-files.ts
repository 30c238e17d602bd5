import type { Needs } from "./needs.ts";

/** Files of the last guide. */
export interface KeptFiles {
  /**
   * Puts the last guide's files into the new one when they were made of the same needs and stand as they were made.
   * @param kind what is made; two ways to make a file never share a kind
   * @param addresses inside the guide
   * @returns false when they must be made
   */
  reuse(kind: string, needs: Needs, addresses: readonly string[]): boolean;
}

/** No guide was made before. */
export const keptNothing: KeptFiles = { reuse: () => false };
