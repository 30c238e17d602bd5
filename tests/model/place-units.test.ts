import { expect, test } from "vitest";
import { distanceText, volumeText } from "../../build/model/units.ts";

// NIST Special Publication 811 (2008), appendix B.8: mile 1,609.344 m, yard 0.9144 m, acre-foot 1,233.489 m3.
test("distances over water in yards and miles, metres and kilometres", () => {
  expect(distanceText(500 * 0.9144, "imperial")).toBe("500 yd");
  expect(distanceText(1.5 * 1609.344, "imperial")).toBe("1.5 mi");
  expect(distanceText(536, "metric")).toBe("540 m");
  expect(distanceText(1940, "metric")).toBe("1.9 km");
});

test("volumes in acre-feet and cubic metres, to three digits", () => {
  expect(volumeText(150 * 1233.489, "imperial")).toBe("150 acre-feet");
  expect(volumeText(233_126, "metric")).toBe("233,000 m³");
});
