import { composeGuide } from "../../build/guide/compose.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { loadContent } from "../../build/input/load-content.ts";

/** The guide of the demonstration club with the standing chapters, as the program makes it. */
export async function demoGuide(): Promise<Guide> {
  const { club, problems } = await loadClub("demo-data", {});
  if (club === undefined) throw new Error(`demo-data cannot be read: ${problems[0]?.message}`);
  const { guide } = composeGuide(club, await loadContent(), { version: "0.0.0" });
  if (guide === undefined) throw new Error("demo-data makes no guide");
  return guide;
}
