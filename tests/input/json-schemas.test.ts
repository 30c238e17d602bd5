import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import addFormats from "ajv-formats";
import { load } from "js-yaml";
import { describe, expect, test } from "vitest";
import { scaffold } from "../../build/edit/scaffold.ts";
import { inputSchemas } from "../../build/input/json-schemas.ts";

const ajv = new Ajv2020({ allErrors: true, strict: true, strictTypes: false });
addFormats.default(ajv);
const schemas = inputSchemas();
const validators = Object.fromEntries(
  Object.entries(schemas).map(([kind, schema]) => [kind, ajv.compile(schema)]),
);

/** Validates YAML text as an editor would; the complaints. */
function complaints(kind: string, text: string): string[] {
  const validate = validators[kind];
  if (validate === undefined) throw new Error(`no schema ${kind}`);
  validate(load(text));
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

/** Paths of the keys anywhere in a schema that an editor could not explain. */
function undescribed(node: unknown, path: string): string[] {
  if (typeof node !== "object" || node === null) return [];
  const { properties = {} } = node as { properties?: Readonly<Record<string, { description?: string }>> };
  const own = Object.entries(properties)
    .filter(([, child]) => !/\S/.test(child.description ?? ""))
    .map(([key]) => `${path}.${key}`);
  return [...own, ...Object.entries(node).flatMap(([key, child]) => undescribed(child, `${path}/${key}`))];
}

test("there is a schema for each kind of file", () => {
  expect(Object.keys(schemas).sort()).toEqual(["club", "lake", "pattern", "reports", "rigs", "trip"]);
});

test.each(Object.entries(schemas))("%s says draft 2020-12 and explains every key", (_, schema) => {
  expect(schema).toMatchObject({ $schema: "https://json-schema.org/draft/2020-12/schema" });
  expect(undescribed(schema, "")).toEqual([]);
});

const KIND_OF_FOLDER: Readonly<Record<string, string>> = {
  lakes: "lake",
  patterns: "pattern",
  trips: "trip",
  reports: "reports",
};
const kindOf = (file: string): string => {
  const [, folder = "", name] = file.split("/");
  return name === undefined ? folder.replace(/\.yaml$/, "") : (KIND_OF_FOLDER[folder] ?? folder);
};

test.each(
  scaffold("club", "Test Club", { season: 2026, side: "north", lakes: [] }).filter(
    ({ path }) => !path.includes("/."),
  ),
)("the schema accepts $path", ({ path, text }) => {
  expect(complaints(kindOf(path), text)).toEqual([]);
});

test("the schema of rigs accepts the defaults", () => {
  expect(complaints("rigs", readFileSync("content/rig-defaults.yaml", "utf8"))).toEqual([]);
});

test("the schema accepts catches and throat samples", () => {
  const row = `- lake: ember
  date: 2026-05-12
  caught: [{ pattern: pale-scud, way: floating line, fish: 3, hours: 4 h }, { pattern: leech, fish: 0 }]
  samples: [{ scud: 12, chironomid pupa: { count: 3, weight: 0.2 g } }, {}]
`;
  expect(complaints("reports", row)).toEqual([]);
});

test("the schema accepts the demo club's form", () => {
  expect(complaints("club", readFileSync("demo-data/club.yaml", "utf8"))).toEqual([]);
});

describe("an editor marks what the program refuses", () => {
  const FORM = "name: A\nseason: 2026\ntimezone: Etc/UTC\nunits: metric\nreportForm: {";
  const ROW = "- { lake: ember, date: 2026-05-12,";
  const LAKE = "name: Ember Lake\nposition: { lat: 41.3, lon: -106.3 }\n";
  test.each<[string, string, string]>([
    ["lake", `${LAKE}elevation: 2580\n`, "/elevation must be string"],
    ["lake", `${LAKE}elevation: 2580 feet\n`, "/elevation must match pattern"],
    ["lake", `${LAKE}elevatoin: 2580 m\n`, "must NOT have additional properties"],
    ["lake", `${LAKE}iceOff: [{ season: 2024, on: 2024-02-30 }]\n`, "/iceOff/0/on must match format"],
    ["lake", `${LAKE}water: marle\n`, "/water must be equal to one of the allowed values"],
    ["lake", "name: Ember Lake\nposition: { lat: 141.3, lon: -106.3 }\n", "/position/lat must be <= 90"],
    ["lake", "name: Ember Lake\n", "must have required property 'position'"],
    ["lake", `${LAKE}turnoverRule: never\n`, "/turnoverRule must be equal to constant"],
    ["reports", "- { lake: ember }\n", "/0 must have required property 'date'"],
    ["reports", `${ROW} caught: [{ pattern: a, fish: -1 }] }`, "/0/caught/0/fish must be >= 0"],
    ["reports", `${ROW} caught: [{ pattern: a, fish: 1.5 }] }`, "/0/caught/0/fish must be integer"],
    ["reports", `${ROW} caught: [{ fish: 1 }] }`, "must have required property 'pattern'"],
    ["reports", `${ROW} caught: [{ pattern: a, fish: 1, hours: 4 }] }`, "/0/caught/0/hours must be string"],
    ["reports", `${ROW} samples: [{ scuds: 1 }] }`, "/0/samples/0 must NOT have additional properties"],
    ["reports", `${ROW} samples: [{ scud: -1 }] }`, "/0/samples/0/scud must be >= 0"],
    ["reports", `${ROW} samples: [{ scud: { weight: 1 g } }] }`, "must have required property 'count'"],
    [
      "club",
      `${FORM} dates: mm/dd, columns: { lake: a, date: b } }`,
      "/reportForm/dates must be equal to one of",
    ],
    ["club", `${FORM} dates: day/month/year, columns: { lake: a } }`, "must have required property 'date'"],
    [
      "club",
      `${FORM} dates: day/month/year, columns: { lake: a, date: b, c: d } }`,
      "must NOT have additional",
    ],
    [
      "club",
      `${FORM} dates: day/month/year, columns: { lake: a, date: b, water: { column: c, unit: F } } }`,
      "/reportForm/columns/water/unit must be equal to one of",
    ],
    ["rigs", "leaders: []\n", "/leaders must NOT have fewer than 1 items"],
  ])("%s: %j", (kind, text, complaint) => {
    expect(complaints(kind, text).join("\n")).toContain(complaint);
  });
});
