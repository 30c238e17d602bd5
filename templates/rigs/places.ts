import type { Guide } from "../../build/guide/guide-schema.ts";
import type { Way } from "../../build/model/club.ts";

/** Where on the rigs page a leader stands; undefined for a name that is not there. */
export function leaderId({ rigs }: Pick<Guide, "rigs">, name: string): string | undefined {
  const place = rigs.leaders.findIndex((leader) => leader.name === name);
  return place < 0 ? undefined : `leader-${place + 1}`;
}

/** Where on the rigs page a way of fishing stands. */
export const wayId = (way: Way): string => `way-${way.replaceAll(" ", "-")}`;
