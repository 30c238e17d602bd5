import { describe, expect, test } from "vitest";
import { layoutLaunchCard } from "../../build/cards/launch-card.ts";
import type { Part } from "../../build/cards/layout/page.ts";
import { guideFrame } from "../../build/guide/guide-frame.ts";
import { type BareLake, type Guide, type GuideLake, lakeFacts } from "../../build/guide/guide-schema.ts";
import { bareLaunch } from "../../build/season/launch.ts";
import { guideOf } from "../lake-fixture.ts";
import { AS_OF, cardsOf, ember, kettle, long, ruler } from "./card-fixture.ts";
import { faults, piecesOf, written } from "./legibility.ts";

type Launch = GuideLake["launch"];
type Cell = Launch["rows"][number]["cells"][number];

const cell = (surface_C: number, heat: Cell["heat"], ...states: Cell["states"]): Cell => ({
  surface_C,
  heat,
  states,
  mixedSigns: heat !== "stop" && (states[0]?.chance ?? 1) < 0.5,
});

/** Cells of each kind: one state, a second one near, mixed signs in warm water, and stop. */
const CELLS: readonly Cell[] = [
  cell(6, null, { state: "turnover", chance: 0.944 }),
  cell(15, null, { state: "postTurnover", chance: 0.502 }, { state: "turnover", chance: 0.487 }),
  cell(18, "take care", { state: "laterWeeks", chance: 0.47 }, { state: "postTurnover", chance: 0.28 }),
  cell(21, "stop"),
];
const LAUNCH: Launch = {
  counted: true,
  depth_m: 4.5,
  rows: [{ clarity: "usual", below: "colder", cells: [...CELLS] }],
};

const card = (launch: Launch, change: Partial<Guide> = {}) => {
  const lake = { ...ember, launch };
  return layoutLaunchCard(guideFrame(guideOf([lake], AS_OF, change)), lake, ruler);
};

/** A chance in a hundred; none is certain. */
const percent = (chance: number): string =>
  chance > 0.99 ? ">99" : chance < 0.01 ? "<1" : String(Math.round(chance * 100));

/** A table's cells as they read, row by row. */
function tableOf({ parts }: { readonly parts: readonly Part[] }): string[][] {
  const table = parts.find(({ role }) => role === "Table");
  return (table?.parts ?? []).map((row) =>
    row.parts.map((part) =>
      piecesOf(part)
        .flatMap((piece) => (piece.kind === "text" ? [piece.text.trim().replaceAll("\u00a0", " ")] : []))
        .join(" "),
    ),
  );
}

describe("the launch card", () => {
  test("prints states and chances, both where they are near, and no chance under stop", () => {
    expect(tableOf(card(LAUNCH).front.face)).toEqual([
      ["Surface", "43 °F", "59 °F", "64 °F take care", "70 °F"],
      ["usual colder below", "T 94", "B 50 T 49", "L 47 B 28 mixed", "STOP"],
    ]);
  });

  test("has a cell for each of the guide's, with its states and no other", () => {
    const launch = bareLaunch({ area_ha: 16.2 });
    const letters = { iced: "", iceOff: "I", turnover: "T", postTurnover: "B", laterWeeks: "L" };
    const [, ...rows] = tableOf(card(launch).front.face);
    expect(rows.length).toBe(launch.rows.length);
    for (const [i, { cells }] of launch.rows.entries())
      for (const [j, { heat, states, mixedSigns }] of cells.entries()) {
        const said = states.map(({ state, chance }) => `${letters[state]} ${percent(chance)}`);
        const all = heat === "stop" ? ["STOP"] : [...said, ...(mixedSigns ? ["mixed"] : [])];
        expect([i, j, rows[i]?.[j + 1]]).toEqual([i, j, all.join(" ")]);
      }
  });

  test("is in the club's units", () => {
    const { club } = guideOf([ember], AS_OF);
    const { front, back } = card(LAUNCH, { club: { ...club, units: "metric" } });
    expect(tableOf(front.face)[0]).toEqual(["Surface", "6 °C", "15 °C", "18 °C take care", "21 °C"]);
    expect(written(back.face)).toContain("at 4.5 m");
    expect(written(back.face)).toContain("From 20 °C STOP.");
    expect(written(card(LAUNCH).back.face)).toContain("From 68 °F STOP.");
    expect(written(card(LAUNCH).back.face)).toContain("at 15 ft");
  });

  test("says what its numbers rest on, and that it says nothing about ice", () => {
    const counted = written(card(LAUNCH).back.face);
    const bare = written(card({ ...LAUNCH, counted: false }).back.face);
    expect(counted).toContain("days since ice-off count too");
    expect(bare).toContain("no ice-off is counted from");
    for (const words of [counted, bare]) {
      expect(words).toContain("Local rules and licensed instruction come first.");
      expect(words).toContain("says nothing about safe ice");
    }
  });

  test.each([
    ["of a full table", { launch: bareLaunch({ area_ha: 16.2 }), name: ember.name }],
    ["where every cell is mixed", { launch: mixedEverywhere(), name: ember.name }],
    ["of a long name", { launch: bareLaunch({}), name: long.name }],
  ])("is legible and fits, %s", (_, change) => {
    const lake = { ...ember, ...change };
    const { front, back } = layoutLaunchCard(guideFrame(guideOf([lake], AS_OF)), lake, ruler);
    expect([front, back].map(({ face, misfits }) => [faults(face), misfits])).toEqual([
      [[], []],
      [[], []],
    ]);
  });

  test("is made for every lake, also for one without a forecast", async () => {
    const facts = Object.fromEntries(
      Object.entries(kettle).filter(([key]) => key in lakeFacts.shape),
    ) as Omit<BareLake, "slug" | "why" | "launch">;
    const { slug, launch } = kettle;
    const without = { ...facts, slug, launch, why: "Kettle Lake: does not freeze." };
    const guide = guideOf([ember], AS_OF, { lakesWithoutForecast: [without] });
    const { files, problems } = await cardsOf(guide);
    expect(problems).toEqual([]);
    expect([...files.keys()].filter((file) => file.endsWith("-launch.pdf"))).toEqual([
      "ember-launch.pdf",
      "kettle-launch.pdf",
    ]);
    const { files: one } = await cardsOf(guide, "ember");
    expect([...one.keys()]).toEqual(["ember-launch.pdf", "ember.pdf"]);
  });
});

/** The fullest table that can be: two states and “mixed” in every cell. */
function mixedEverywhere(): Launch {
  const { rows, ...launch } = bareLaunch({ area_ha: 16.2 });
  const states: Cell["states"] = [
    { state: "turnover", chance: 0.47 },
    { state: "postTurnover", chance: 0.46 },
  ];
  return {
    ...launch,
    rows: rows.map((row) => ({
      ...row,
      cells: row.cells.map((one) => (one.heat === "stop" ? one : { ...one, states, mixedSigns: true })),
    })),
  };
}
