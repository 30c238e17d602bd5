import { describe, expect, test } from "vitest";
import { unrecordedIceOff } from "../../build/guide/report-seasons.ts";
import type { Lake, Report } from "../../build/model/club.ts";
import type { Mark } from "../../build/season/forecast.ts";
import { day } from "../lake-fixture.ts";

const where = { file: "reports/2026.yaml", line: 1, column: 1 };
const seen = (date: string, what: Pick<Report, "ice" | "phase">): Report => ({
  lake: "ember",
  date: day(date),
  catches: [],
  samples: [],
  where,
  ...what,
});
const lake = (...iceOff: Lake["iceOff"]) => ({ position: { lat: 41, lon: -106 }, iceOff });
const found = (reports: Report[], marks: Mark[] = [], of = lake()) => unrecordedIceOff(of, reports, marks);

const ON = seen("2026-05-02", { ice: "on" });
const OFF = seen("2026-05-12", { ice: "off" });

describe("ice-off that reports bracket and no row records", () => {
  test("runs from the last day seen iced to the first day seen open", () => {
    expect(found([seen("2026-04-20", { ice: "on" }), OFF, ON, seen("2026-05-20", { ice: "off" })])).toEqual([
      { season: 2026, after: "2026-05-02", by: "2026-05-12" },
    ]);
  });

  test("ice in part may still go on that day; a phase by itself says open", () => {
    expect(found([seen("2026-05-06", { ice: "part" }), seen("2026-05-09", { phase: "ice-off" })])).toEqual([
      { season: 2026, after: "2026-05-05", by: "2026-05-09" },
    ]);
  });

  test("needs both ends, in one season, and in their order", () => {
    expect(found([ON])).toEqual([]);
    expect(found([OFF])).toEqual([]);
    expect(found([seen("2025-05-02", { ice: "on" }), OFF])).toEqual([]);
    expect(found([seen("2026-05-20", { ice: "on" }), OFF])).toEqual([]);
  });

  test("is not asked for again once a row of the season stands in the lake's file", () => {
    expect(found([ON, OFF], [], lake({ season: 2026, on: day("2026-05-10"), where }))).toEqual([]);
    expect(found([ON, OFF], [], lake({ season: 2025, on: day("2025-05-10"), where }))).toHaveLength(1);
  });

  test("leaves out reports that the forecast doubts", () => {
    const doubted: Mark = { date: day("2026-05-12"), seen: "ice off", doubted: true };
    expect(found([ON, OFF], [doubted])).toEqual([]);
    expect(found([ON, OFF, seen("2026-05-15", { ice: "off" })], [doubted])).toMatchObject([
      { by: "2026-05-15" },
    ]);
  });
});
