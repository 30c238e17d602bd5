import { expect, test } from "vitest";
import { atAnchor, swingTable } from "../../build/rigs/tables/at-anchor.ts";
import { oppositeWind, WINDS, windBearing_deg } from "../../build/water/compass.ts";
import { box } from "./box-fixture.ts";

test("rods at anchor point downwind: half the compass from where the wind blows from", () => {
  for (const wind of WINDS)
    expect((windBearing_deg(oppositeWind(wind)) - windBearing_deg(wind) + 360) % 360).toBe(180);
  expect(oppositeWind("W")).toBe("E");
  expect(oppositeWind("NNW")).toBe("SSE");
});

test("the swings told at anchor are those of the swing table", () => {
  const table = swingTable(box);
  const { swing } = atAnchor(table);
  expect(swing.map(({ rod_s }) => rod_s)).toEqual([60, 30]);
  for (const { rod_s, words } of swing)
    for (const angle of [90, 60, 30]) {
      const cells = table.rows.find(({ holder_deg }) => holder_deg === angle)?.cells;
      expect(words).toContain(`${angle}° ${cells?.find((cell) => cell.rod_s === rod_s)?.text}`);
    }
});

test("what is trade practice says that it has no source; no table, no swings", () => {
  const plan = atAnchor({ line_m: 12, until_deg: 10, columns: [], rows: [], note: "" });
  expect(plan.note).toBe("Common practice, no source.");
  expect(plan.swing).toEqual([]);
  expect(plan.ways.map(({ words }) => words).join(" ")).toMatch(
    /stern point downwind.*lee side point downwind/,
  );
});
