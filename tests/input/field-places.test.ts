import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { placeAtFields } from "../../build/input/field-places.ts";

test("a card's problem stands at its key's line, is said once, and at the file's start where no key is written", async () => {
  const club = await mkdtemp(path.join(tmpdir(), "places-"));
  onTestFinished(() => rm(club, { recursive: true, force: true }));
  await writeFile(path.join(club, "ember.yaml"), "# mine\nname: Ember Lake\nhazards:\n  - Stumps\n");
  const at = (card: string, field: string, by: string) => ({
    ...({ file: "ember.yaml", line: 1, column: 1, severity: "error", code: "card-overflow" } as const),
    ...{ field, message: `card ${card}, field ${field}: ${by} too long`, hint: "Shorten it." },
  });
  const placed = await placeAtFields(club, [
    at("ember", "hazards", "190 mm"),
    at("ember-launch", "hazards", "160 mm"),
    at("ember", "map", "3 mm"),
  ]);
  expect(placed.map(({ line, message }) => [line, message])).toEqual([
    [3, "card ember, field hazards: 190 mm too long"],
    [1, "card ember, field map: 3 mm too long"],
  ]);
});
