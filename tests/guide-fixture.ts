import type { Guide } from "../build/guide/guide-schema.ts";
import { bareLake, day, fullLake, guideOf } from "./lake-fixture.ts";

/** One valid guide with a lake in each state: iced, ice-off, turnover, best weeks and later weeks. */
export function guideFixture(): Guide {
  const asOf = day("2026-05-16");
  return guideOf(
    [
      bareLake("cinder", "Cinder Tarn", day("2026-04-06"), asOf),
      bareLake("willow", "Willow Pond", day("2026-04-18"), asOf),
      bareLake("kettle", "Kettle Lake", day("2026-04-29"), asOf),
      fullLake("ember", "Ember Lake", day("2026-05-12"), asOf),
      bareLake("high", "High Lake", day("2026-06-01"), asOf),
    ],
    asOf,
  );
}
