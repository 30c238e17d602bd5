type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
interface Slot {
  readonly holder: Json[] | { [key: string]: Json };
  readonly key: string;
}

/** Values that do not belong where they are put. */
const ODD: readonly Json[] = [
  null,
  true,
  0,
  -1,
  1e308,
  180,
  -180,
  90.0001,
  541,
  "",
  "-3 m",
  "1e9 ft",
  [],
  [[]],
  [[[]]],
  {},
  { kind: "shoreline" },
  { type: "GeometryCollection", geometries: [] },
  [0, 0],
  [-106.3, 41.2, 5, 6, 7],
  "Polygon",
  "Point",
  "contour",
  "mark",
];

function slotsOf(value: Json): Slot[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => [{ holder: value, key }, ...slotsOf(inner)]);
}

/** A JSON text with one value replaced, removed, doubled or put in disorder; one that is no JSON with a piece cut out. */
export function mutatedJson(text: string, at: number, how: number, put: string): string {
  let data: Json;
  try {
    data = JSON.parse(text) as Json;
  } catch {
    return text.slice(0, at % (text.length + 1)) + put + text.slice((at % (text.length + 1)) + how);
  }
  const slots = slotsOf(data);
  // Half of them near the top: most values of a shape are single coordinates.
  const upper = slots.filter(({ holder }) => !Array.isArray(holder));
  const list = how % 2 === 0 && upper.length > 0 ? upper : slots;
  const slot = list[at % list.length];
  if (slot === undefined) return put;
  const { holder, key } = slot;
  const now = (holder as { [key: string]: Json })[key] ?? null;
  const set = (value: Json): void => {
    (holder as { [key: string]: Json })[key] = value;
  };
  if (how < 4) set(ODD[at % ODD.length] ?? null);
  else if (how < 6) set(put);
  else if (how < 8 && Array.isArray(holder)) holder.splice(Number(key), 1);
  else if (how < 10 && Array.isArray(holder)) holder.splice(Number(key), 0, structuredClone(now));
  else if (Array.isArray(now)) now.reverse();
  else if (typeof now === "number") set(now * -1.5);
  else if (!Array.isArray(holder)) delete holder[key];
  return JSON.stringify(data);
}
