import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { CRATER_LAKE, CRATER_LAKE_FIGURES } from "../reference/crater-lake.ts";
import { run } from "./run.ts";

let work: string;
const read = (name: string): Promise<string> => readFile(path.join(work, "site", name), "utf8");

beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), "outline-"));
  const data = path.join(work, "club");
  await mkdir(path.join(data, "lakes"), { recursive: true });
  await writeFile(
    path.join(data, "club.yaml"),
    "name: Outline Club\nseason: 2026\nasOf: 2026-05-16\ntimezone: America/Los_Angeles\nunits: metric\n",
  );
  // the ice-off is invented: without one there is no forecast, and no page of the place
  await writeFile(
    path.join(data, "lakes/crater.yaml"),
    "name: Crater Lake\nposition: { lat: 42.944, lon: -122.106 }\nelevation: 1883 m\narea: 5340 ha\niceOff: [{ season: 2025, on: 2025-05-10 }]\n",
  );
  await writeFile(
    path.join(data, "lakes/crater.geojson"),
    JSON.stringify({
      type: "FeatureCollection",
      features: [
        {
          type: "Feature",
          properties: { kind: "shoreline" },
          geometry: { type: "Polygon", coordinates: [CRATER_LAKE.shore, CRATER_LAKE.island] },
        },
      ],
    }),
  );
  expect(await run("guide", "--data", data, "--out", path.join(work, "site"))).toMatchObject({ exit: 0 });
});
afterAll(() => rm(work, { recursive: true, force: true }));

test("the outline of Crater Lake, drawn by hand, goes through the whole command: its published area and width come out", async () => {
  const { lakes } = JSON.parse(await read("guide.json")) as Guide;
  const { size, wind } = lakes[0]?.place ?? {};
  expect(Math.abs((size?.area_ha ?? 0) / CRATER_LAKE_FIGURES.area_ha - 1)).toBeLessThan(0.1);
  expect(Math.abs((wind?.longest.fetch_m ?? 0) / CRATER_LAKE_FIGURES.across_m[1] - 1)).toBeLessThan(0.1);
  expect(size?.islands).toBe(1);
});

test("its page has the map and its card the map card", async () => {
  expect(await read("lakes/crater/place/index.html")).toContain("Map of Crater Lake, north up");
  const card = await readFile(path.join(work, "site/cards/crater.pdf"), "latin1");
  expect(card).toContain("(Crater Lake, map)");
});
