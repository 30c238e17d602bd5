import type { Diagnostic, SourceSpot } from "../../model/diagnostic.ts";
import { asWritten, type Fault, isFault, quoted } from "../../model/fault.ts";
import { type LonLat, MARK_KINDS, type MarkKind } from "../../model/lake-shape.ts";
import type { ClubFile } from "../club-files.ts";
import { nearestOrList } from "../names.ts";
import { errorAt } from "../problem.ts";
import { type JsonDocument, type JsonPath, readJson } from "./json-document.ts";
import {
  LINE_DEPTH,
  NO_POSITION,
  type RawLine,
  readContourDepth,
  readLines,
  readPosition,
} from "./positions-and-depths.ts";

/** A lake's GeoJSON file, read but not yet held against the lake. */
export interface RawShape {
  readonly doc: JsonDocument;
  /** One polygon a basin: its outer ring, then its islands. */
  readonly shoreline: readonly (readonly RawLine[])[];
  readonly contours: readonly (RawLine & { readonly depth_m: number })[];
  readonly marks: readonly {
    readonly mark: MarkKind;
    readonly name?: string;
    readonly at: LonLat;
    readonly where: SourceSpot;
  }[];
}

/** Of all lines of one lake. */
const MOST_POSITIONS = 100_000;

const KINDS = ["shoreline", "contour", "mark"] as const;
const KINDS_SHOWN = `"properties": { "kind": "shoreline" }, or "contour", or "mark"`;

/** Any object of a GeoJSON file, with every name that is looked at. */
interface Group {
  readonly type?: unknown;
  readonly features?: unknown;
  readonly properties?: unknown;
  readonly geometry?: unknown;
  readonly coordinates?: unknown;
  readonly kind?: unknown;
  readonly depth?: unknown;
  readonly mark?: unknown;
  readonly name?: unknown;
}
const isGroup = (value: unknown): value is Group =>
  typeof value === "object" && value !== null && !Array.isArray(value);

class Reader {
  readonly shoreline: (readonly RawLine[])[] = [];
  readonly contours: (RawLine & { depth_m: number })[] = [];
  readonly marks: RawShape["marks"][number][] = [];
  #hasShoreline = false;
  #positions = 0;

  constructor(
    readonly doc: JsonDocument,
    readonly problems: Diagnostic[],
  ) {}

  refuse(path: JsonPath, fault: Fault): undefined {
    this.problems.push(errorAt(this.doc.spot(path), fault));
    return undefined;
  }

  read(): void {
    const { data } = this.doc;
    const single = isGroup(data) && data.type === "Feature";
    const features = isGroup(data) && data.type === "FeatureCollection" ? data.features : undefined;
    if (single) this.#feature(data, []);
    else if (Array.isArray(features)) this.#features(features);
    else
      this.refuse([], {
        code: "not-geojson",
        message: "this is not a GeoJSON FeatureCollection",
        hint: 'begin it with { "type": "FeatureCollection", "features": [ … ] }',
      });
  }

  #features(features: readonly unknown[]): void {
    for (const [i, feature] of features.entries()) this.#feature(feature, ["features", i]);
    if (!this.#hasShoreline)
      this.refuse([], {
        code: "no-shoreline",
        message: "no feature is the shoreline",
        hint: `give the lake's polygon ${KINDS_SHOWN.slice(0, KINDS_SHOWN.indexOf(","))}`,
      });
  }

  #feature(feature: unknown, path: JsonPath): void {
    const [properties, geometry] = isGroup(feature) ? [feature.properties, feature.geometry] : [];
    const kind = isGroup(properties) ? properties.kind : undefined;
    if (!isGroup(geometry) || !isGroup(properties) || typeof kind !== "string") {
      const missing = isGroup(geometry) ? "kind" : "geometry";
      // Most likely this one is meant for it: told once is enough.
      if (isGroup(geometry) && /Polygon$/.test(String(geometry.type))) this.#hasShoreline = true;
      this.refuse(path, {
        code: missing === "kind" ? "feature-without-kind" : "feature-without-geometry",
        message: `this feature has no ${missing}`,
        hint: missing === "kind" ? `give it ${KINDS_SHOWN}` : "draw it, or remove the feature",
      });
      return;
    }
    const within = [...path, "geometry", "coordinates"];
    if (kind === "shoreline") this.#readShoreline(geometry, path, within);
    else if (kind === "contour") this.#contour(geometry, properties, path, within);
    else if (kind === "mark") this.#mark(geometry, properties, path, within);
    else
      this.refuse([...path, "properties", "kind"], {
        code: "not-a-choice",
        message: `${quoted(kind)} is not a kind of feature`,
        hint: nearestOrList(kind, KINDS, "kinds"),
      });
  }

  #wrongGeometry(kind: string, wanted: string, path: JsonPath): undefined {
    return this.refuse([...path, "geometry"], {
      code: "wrong-geometry",
      message: `a ${kind} is not drawn so`,
      hint: `draw it as a ${wanted}`,
    });
  }

  /** The lines of a geometry; undefined, with a problem, when one is not a list of positions. */
  #lines(coordinates: unknown, path: JsonPath, depth: number): RawLine[] | undefined {
    const lines = readLines(coordinates, path, depth);
    if ("fault" in lines) return this.refuse(lines.path, lines.fault);
    const hadRoom = this.#positions <= MOST_POSITIONS;
    this.#positions += lines.lines.reduce((sum, { line }) => sum + line.length, 0);
    if (this.#positions <= MOST_POSITIONS) return lines.lines;
    if (hadRoom)
      this.refuse(path, {
        code: "too-many-positions",
        message: `with this the file draws lines through more than ${MOST_POSITIONS} positions`,
        hint: "export it simplified: one position every few metres is more than enough",
      });
    return undefined;
  }

  #readShoreline(geometry: Group, path: JsonPath, within: JsonPath): void {
    const { type, coordinates } = geometry;
    if (type !== "Polygon" && type !== "MultiPolygon") {
      this.#wrongGeometry("shoreline", "Polygon or MultiPolygon", path);
      this.#hasShoreline = true;
      return;
    }
    if (this.#hasShoreline) {
      this.refuse(path, {
        code: "second-shoreline",
        message: "this is a second shoreline",
        hint: "a lake of several basins is one feature, a MultiPolygon; draw islands as holes",
      });
      return;
    }
    this.#hasShoreline = true;
    const polygons: readonly unknown[] =
      type === "Polygon" ? [coordinates] : Array.isArray(coordinates) ? coordinates : [];
    for (const [i, polygon] of polygons.entries()) {
      const rings = this.#lines(polygon, type === "Polygon" ? within : [...within, i], 1);
      if (rings !== undefined) this.shoreline.push(rings);
    }
  }

  #contour(geometry: Group, properties: Group, path: JsonPath, within: JsonPath): void {
    const levels = LINE_DEPTH.get(geometry.type);
    if (levels === undefined) {
      this.#wrongGeometry("contour", "LineString or Polygon", path);
      return;
    }
    const depth = readContourDepth(properties.depth);
    if (isFault(depth)) {
      this.refuse([...path, "properties", "depth"], depth);
      return;
    }
    const lines = this.#lines(geometry.coordinates, within, levels) ?? [];
    for (const line of lines) this.contours.push({ ...line, depth_m: depth });
  }

  #mark(geometry: Group, properties: Group, path: JsonPath, within: JsonPath): void {
    if (geometry.type !== "Point") {
      this.#wrongGeometry("mark", "Point", path);
      return;
    }
    const { mark, name } = properties;
    const known = MARK_KINDS.find((one) => one === mark);
    if (known === undefined) {
      this.refuse([...path, "properties", "mark"], {
        code: "not-a-choice",
        message:
          mark === undefined
            ? "this mark does not say what it marks"
            : `${quoted(asWritten(mark))} is not a mark`,
        hint: nearestOrList(asWritten(mark ?? ""), MARK_KINDS, "marks"),
      });
      return;
    }
    const at = readPosition(geometry.coordinates);
    if (at === undefined) {
      this.refuse(within, NO_POSITION);
      return;
    }
    this.marks.push({
      mark: known,
      at,
      where: this.doc.roughSpot(path),
      ...(typeof name === "string" && name.trim() !== "" ? { name: name.trim() } : {}),
    });
  }
}

/** Reads a lake's GeoJSON file; undefined when it is not JSON. */
export function readGeojson({ file, text }: ClubFile, problems: Diagnostic[]): RawShape | undefined {
  const doc = readJson(file, text, problems);
  if (doc === undefined) return undefined;
  const reader = new Reader(doc, problems);
  reader.read();
  return { doc, shoreline: reader.shoreline, contours: reader.contours, marks: reader.marks };
}
