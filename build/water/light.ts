import {
  type AstroTime,
  Body,
  Illumination,
  MoonPhase,
  Observer,
  SearchAltitude,
  SearchHourAngle,
  SearchRiseSet,
} from "astronomy-engine";
import { addDays, type CalendarDate, localMinute, startOfDay_ms } from "../model/calendar.ts";
import { toDecimals } from "./plane.ts";
import { type Light, MOON_PHASES } from "./water-schema.ts";

/** Noon of 1 January 2000, UT: where astronomers count days from. */
const J2000_MS = 946_728_000_000;
const DAY_MS = 86_400_000;
const daysOf = (epoch_ms: number): number => (epoch_ms - J2000_MS) / DAY_MS;
const epochOf = ({ ut }: AstroTime): number => ut * DAY_MS + J2000_MS;

/** The sun's centre at civil dawn and dusk, degrees. Astronomical Almanac. */
const CIVIL_TWILIGHT_DEG = -6;

const WORDS: Readonly<Record<Light["sun"], string | null>> = {
  "day and night": null,
  "no night": "no night: twilight lasts from sunset to sunrise",
  "no sunset": "no sunset: the sun stays up",
  "no sunrise": "no sunrise: twilight about noon, no more",
  "no daylight": "no sunrise and no first light: dark all day",
};

interface SunDay {
  readonly dawn: AstroTime | null;
  readonly rise: AstroTime | null;
  readonly set: AstroTime | null;
  readonly dusk: AstroTime | null;
  readonly isUpAtNoon: boolean;
}

function sunDay(observer: Observer, dayStart: number): SunDay {
  const noon = SearchHourAngle(Body.Sun, observer, 0, dayStart);
  const before = SearchHourAngle(Body.Sun, observer, 12, noon.time, -1).time;
  const after = SearchHourAngle(Body.Sun, observer, 12, noon.time, 1).time;
  const [morning, evening] = [noon.time.ut - before.ut, after.ut - noon.time.ut];
  return {
    dawn: SearchAltitude(Body.Sun, observer, 1, before, morning, CIVIL_TWILIGHT_DEG),
    rise: SearchRiseSet(Body.Sun, observer, 1, before, morning),
    set: SearchRiseSet(Body.Sun, observer, -1, noon.time, evening),
    dusk: SearchAltitude(Body.Sun, observer, -1, noon.time, evening, CIVIL_TWILIGHT_DEG),
    isUpAtNoon: noon.hor.altitude > 0,
  };
}

function kindOf({ dawn, rise, set, dusk, isUpAtNoon }: SunDay): Light["sun"] {
  if (rise === null || set === null) {
    if (isUpAtNoon) return "no sunset";
    return dawn === null && dusk === null ? "no daylight" : "no sunrise";
  }
  return dawn === null || dusk === null ? "no night" : "day and night";
}

const QUARTER_DEG = 90;

/** The quarter that falls on the day, or else what lies between two. */
function moonPhase(dayStart: number, dayEnd: number): Light["moon"]["phase"] {
  const before = Math.floor(MoonPhase(dayStart) / QUARTER_DEG);
  const after = Math.floor(MoonPhase(dayEnd) / QUARTER_DEG);
  return MOON_PHASES[before === after ? 2 * after + 1 : 2 * after] ?? "new moon";
}

/**
 * First light, sunrise, sunset, last light and the moon on one day, on a level horizon at sea level.
 * @param timezone IANA name
 */
export function lightOn(
  date: CalendarDate,
  { lat, lon }: { readonly lat: number; readonly lon: number },
  timezone: string,
): Light {
  const dayStart = daysOf(startOfDay_ms(date, timezone));
  const dayEnd = daysOf(startOfDay_ms(addDays(date, 1), timezone));
  const day = sunDay(new Observer(lat, lon, 0), dayStart);
  const written = (time: AstroTime | null): string | null =>
    time === null ? null : localMinute(epochOf(time), timezone);
  const sun = kindOf(day);
  return {
    date,
    firstLight: written(day.dawn),
    sunrise: written(day.rise),
    sunset: written(day.set),
    lastLight: written(day.dusk),
    sun,
    words: WORDS[sun],
    moon: {
      phase: moonPhase(dayStart, dayEnd),
      lit: toDecimals(Illumination(Body.Moon, (dayStart + dayEnd) / 2).phase_fraction, 2),
    },
  };
}
