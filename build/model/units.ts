import Qty from "js-quantities";

/** Which units a club reads; computing is always SI. */
export type UnitSystem = "imperial" | "metric";

interface QuantityKind {
  /** Unit of every number of this kind inside the program. */
  readonly base: string;
  /** Spellings a club may write, in the order a message lists them. */
  readonly allowed: readonly string[];
}

/** Every kind of quantity the club folder can hold; conversions are js-quantities'. */
export const QUANTITY_KINDS = {
  length: { base: "m", allowed: ["m", "ft", "in", "cm", "mm", "yd"] },
  distance: { base: "km", allowed: ["km", "mi", "m"] },
  area: { base: "hectare", allowed: ["ha", "acre", "km2"] },
  temperature: { base: "tempC", allowed: ["degC", "degF"] },
  mass: { base: "g", allowed: ["g", "mg", "oz", "gr"] },
  density: { base: "kg/m3", allowed: ["kg/m3", "g/cm3"] },
  sinkRate: { base: "m/s", allowed: ["in/s", "cm/s", "m/s", "ft/s"] },
  days: { base: "day", allowed: ["days", "day", "d", "weeks"] },
  duration: { base: "h", allowed: ["h", "min"] },
  seconds: { base: "s", allowed: ["s", "min"] },
  oxygen: { base: "mg/l", allowed: ["mg/L"] },
  angle: { base: "deg", allowed: ["deg"] },
} as const satisfies Record<string, QuantityKind>;
export type QuantityKindName = keyof typeof QUANTITY_KINDS;

/** Exact, by definition of the inch (1959). */
const MM_PER_IN = 25.4;

/** Spellings a club uses that the units library spells otherwise. */
const LIBRARY_SPELLING: Readonly<Record<string, string>> = {
  degC: "tempC",
  degF: "tempF",
  ha: "hectare",
  gr: "grain",
  d: "day",
  "mg/L": "mg/l",
};
const inLibrary = (unit: string): string => LIBRARY_SPELLING[unit] ?? unit;

/** Digits that survive a conversion in floating point; what comes after them is noise: two weeks are 14 days. */
const TRUSTED_DIGITS = 12;

/** What converts between a kind's base unit and each spelling, made once: the library parses units each time it is called. */
const CONVERTERS: ReadonlyMap<string, (value: number) => number> = new Map(
  Object.values(QUANTITY_KINDS).flatMap(({ base, allowed }) =>
    allowed
      .map(inLibrary)
      .flatMap((unit) => [
        [`${unit} ${base}`, Qty.swiftConverter(unit, base)] as const,
        [`${base} ${unit}`, Qty.swiftConverter(base, unit)] as const,
      ]),
  ),
);

/** @throws RangeError for a unit that is not of the kind */
function convert(value: number, from: string, to: string): number {
  const converter = CONVERTERS.get(`${from} ${to}`);
  if (converter === undefined) throw new RangeError(`no quantity is converted from ${from} to ${to}`);
  return converter(value);
}

/** `value` in `unit`, converted to the kind's base unit. */
export function toBase(value: number, unit: string, kind: QuantityKindName): number {
  const { base } = QUANTITY_KINDS[kind];
  if (inLibrary(unit) === base) return value;
  return Number(convert(value, inLibrary(unit), base).toPrecision(TRUSTED_DIGITS));
}

const fromBase = (value: number, kind: QuantityKindName, unit: string): number =>
  convert(value, QUANTITY_KINDS[kind].base, inLibrary(unit));

/** Rounds half away from zero to `digits` decimals and drops trailing zeros: "2.5", "12". */
export const rounded = (value: number, digits = 0): string => String(Number(value.toFixed(digits)));

/** Water depth and leader length, to the half foot or the decimetre: "8.5 ft", "2.6 m". */
export const depthText = (depth_m: number, units: UnitSystem): string =>
  `${depthNumber(depth_m, units)} ${depthUnit(units)}`;

/** The same without its unit, for table cells. */
export const depthNumber = (depth_m: number, units: UnitSystem): string =>
  units === "imperial"
    ? rounded(Math.round(fromBase(depth_m, "length", "ft") * 2) / 2, 1)
    : rounded(depth_m, 1);

/** The same for a card read at arm's length: "2½", "12". */
export const depthGlance = (depth_m: number, units: UnitSystem): string =>
  depthNumber(depth_m, units)
    .replace(/^0\.5$/, "½")
    .replace(".5", units === "imperial" ? "½" : ".5");

const EIGHTHS = ["", "1/8", "¼", "3/8", "½", "5/8", "¾", "7/8"] as const;

/** Diameter of an indicator, to the eighth of an inch or the millimetre: "¾ in", "19 mm". */
export function ballSizeText(diameter_mm: number, units: UnitSystem): string {
  if (units === "metric") return `${rounded(diameter_mm)} mm`;
  const eighths = Math.round((diameter_mm / MM_PER_IN) * 8);
  const whole = Math.floor(eighths / 8);
  return `${[...(whole === 0 ? [] : [whole]), EIGHTHS[eighths % 8]].filter((part) => part !== "").join(" ")} in`;
}

/** Time since the start of the day: "45 min", "1 h 20". */
export const elapsedText = (minutes: number): string => {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, "0")}`;
};

export const depthUnit = (units: UnitSystem): string => (units === "imperial" ? "ft" : "m");

/** "8–12 ft", "2.4–3.7 m". */
export const depthRange = (from_m: number, to_m: number, units: UnitSystem): string => {
  const [from, to] = [depthNumber(from_m, units), depthNumber(to_m, units)];
  return from === to ? `${from} ${depthUnit(units)}` : `${from}–${to} ${depthUnit(units)}`;
};

/** A hand's-breadth length, to the inch or the centimetre: "7 in", "18 cm". */
export const smallLengthText = (length_m: number, units: UnitSystem): string =>
  units === "imperial"
    ? `${rounded(fromBase(length_m, "length", "in"))} in`
    : `${rounded(fromBase(length_m, "length", "cm"))} cm`;

/** Half feet and centimetres closer than this are the same, m. */
const SAME_LENGTH_M = 0.0005;

/** A length as it is cut, never rounded coarser than it was written: "6 in", "1.5 ft", "21 in"; "15 cm", "1.85 m". */
export function cutLengthText(length_m: number, units: UnitSystem): string {
  if (units === "metric")
    return length_m < 1 - SAME_LENGTH_M ? `${rounded(length_m * 100, 1)} cm` : `${rounded(length_m, 2)} m`;
  const feet = fromBase(length_m, "length", "ft");
  const halves = Math.round(feet * 2) / 2;
  return halves >= 1 && Math.abs(toBase(halves, "ft", "length") - length_m) < SAME_LENGTH_M
    ? `${rounded(halves, 1)} ft`
    : `${rounded(fromBase(length_m, "length", "in"), 1)} in`;
}

/** "4–7 in", or "4 in" where both round to the same. */
export function smallLengthRange(from_m: number, to_m: number, units: UnitSystem): string {
  const [from, to] = [smallLengthText(from_m, units), smallLengthText(to_m, units)];
  return from === to ? from : `${from.split(" ")[0]}–${to}`;
}

/** "8,460 ft", "2,580 m". */
export const elevationText = (elevation_m: number, units: UnitSystem): string => {
  const value = units === "imperial" ? fromBase(elevation_m, "length", "ft") : elevation_m;
  return `${Math.round(value).toLocaleString("en-GB")} ${units === "imperial" ? "ft" : "m"}`;
};

/** Longest distance told in yards, and in metres. */
const YARDS_MOST = 800;
const METRES_MOST = 1000;

/** A distance over water: "590 yd", "1.2 mi", "540 m", "1.9 km". */
export function distanceText(distance_m: number, units: UnitSystem): string {
  if (units === "metric")
    return distance_m < METRES_MOST
      ? `${Math.round(distance_m / 10) * 10} m`
      : `${rounded(distance_m / 1000, 1)} km`;
  const distance_yd = fromBase(distance_m, "length", "yd");
  return distance_yd < YARDS_MOST
    ? `${Math.round(distance_yd / 10) * 10} yd`
    : `${rounded(fromBase(distance_m / 1000, "distance", "mi"), 1)} mi`;
}

/** A journey, to five minutes: "40 min", "2 h", "1 h 30 min". */
export function hoursText(hours: number): string {
  const minutes = Math.max(5, Math.round((hours * 60) / 5) * 5);
  const parts = [
    ...(minutes >= 60 ? [`${Math.floor(minutes / 60)} h`] : []),
    ...(minutes % 60 === 0 ? [] : [`${minutes % 60} min`]),
  ];
  return parts.join(" ");
}

/** "44 °F", "6.5 °C". */
export const temperatureText = (temperature_C: number, units: UnitSystem): string =>
  units === "imperial"
    ? `${rounded(fromBase(temperature_C, "temperature", "degF"))} °F`
    : `${rounded(temperature_C, 1)} °C`;

/** "40 acres", "16 ha". */
export const areaText = (area_ha: number, units: UnitSystem): string =>
  units === "imperial" ? `${rounded(fromBase(area_ha, "area", "acre"))} acres` : `${rounded(area_ha)} ha`;

/** Three digits say all that a survey of a lake can. */
const threeDigits = (value: number): string => Number(value.toPrecision(3)).toLocaleString("en-GB");

/** Volume of a lake: "189 acre-feet", "233,000 m³". */
export const volumeText = (volume_m3: number, units: UnitSystem): string =>
  units === "imperial"
    ? `${threeDigits(fromBase(volume_m3 / 10_000, "area", "acre") * fromBase(1, "length", "ft"))} acre-feet`
    : `${threeDigits(volume_m3)} m³`;

/** Sink rates are sold in inches a second: "1.5 in/s", "3.8 cm/s". */
export const sinkRateText = (rate_mps: number, units: UnitSystem): string =>
  units === "imperial"
    ? `${rounded(fromBase(rate_mps, "sinkRate", "in/s"), 1)} in/s`
    : `${rounded(fromBase(rate_mps, "sinkRate", "cm/s"), 1)} cm/s`;

/** Line and tippet diameters, to the half thousandth of an inch or the hundredth of a millimetre: "0.010 in", "0.18 mm". */
export const diameterText = (diameter_mm: number, units: UnitSystem): string =>
  units === "imperial"
    ? `${(diameter_mm / MM_PER_IN).toFixed(4).replace(/0$/, "")} in`
    : `${diameter_mm.toFixed(2)} mm`;

/** A chance for readers, never 0 % or 100 %: "under 1 %", "63 %", "over 99 %". */
export function chanceText(chance: number): string {
  if (chance < 0.01) return "under 1 %";
  if (chance > 0.99) return "over 99 %";
  return `${rounded(chance * 100)} %`;
}

/**
 * The one list of chance words: "nearly certain" within one in a hundred, "likely" from two in three, "even", "unlikely" under one in
 * three. Mastrandrea et al. (2010), IPCC guidance note on uncertainties, table 1, which calls the first “virtually certain” and
 * the third “about as likely as not”.
 */
export const chanceWord = (chance: number): string =>
  chance >= 0.99 ? "nearly certain" : chance >= 0.66 ? "likely" : chance >= 0.33 ? "even" : "unlikely";

/** Catch per unit of effort, fish a rod-hour; rare ones to the hundredth: "0.8", "0.04". */
export const catchRateNumber = (fish_rodHour: number): string =>
  rounded(fish_rodHour, fish_rodHour < 0.1 ? 2 : 1);

/** Fish and the hours they took: "0.8 fish a rod-hour over 14 rod-hours", "no fish in 14 rod-hours". */
export function catchText({ fish, rodHours }: { readonly fish: number; readonly rodHours: number }): string {
  const hours = `${rounded(rodHours, 1)} rod-hour${rodHours === 1 ? "" : "s"}`;
  return fish === 0
    ? `no fish in ${hours}`
    : `${catchRateNumber(fish / rodHours)} fish a rod-hour over ${hours}`;
}

/** The same for the cells of a table in percent: "<1", "63", ">99". */
export const chanceNumber = (chance: number): string =>
  chanceText(chance).replace("under ", "<").replace("over ", ">").replace(" %", "");

const isSameUnit = (unit: string, other: string): boolean => {
  try {
    return Qty(1, unit).eq(Qty(1, inLibrary(other)));
  } catch {
    return false; // the units library throws at a spelling it does not know
  }
};

/** The allowed spelling of the unit somebody wrote otherwise: "feet" is "ft", "°F" is "degF"; undefined when none is it. */
export function unitMeant(written: string, kind: QuantityKindName): string | undefined {
  const plainWord = written.toLowerCase().replace(/s$/, "");
  const bareTemperature = written.replace(/^°\s*/, "deg").replace(/^(?=[CF]$)/i, "deg");
  return QUANTITY_KINDS[kind].allowed.find(
    (unit) =>
      unit.toLowerCase() === bareTemperature.toLowerCase() ||
      unit.toLowerCase() === written.toLowerCase() ||
      isSameUnit(written, unit) ||
      isSameUnit(plainWord, unit),
  );
}

/** "24 mph", "39 km/h": the wind speed of forecasts, in whole units. The mile is 1609.344 m (international, exact). */
export const windSpeedText = (speed_mps: number, units: UnitSystem): string =>
  units === "imperial" ? `${rounded((speed_mps * 3600) / 1609.344)} mph` : `${rounded(speed_mps * 3.6)} km/h`;
