import { screenInk } from "../../../build/draw/ink.ts";
import { lakeMap } from "../../../build/draw/map/lake-map.ts";
import { markText } from "../../../build/draw/map/zones-and-marks.ts";
import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { ADDRESS } from "../../../build/model/addresses.ts";
import { phaseName } from "../../../build/model/phase.ts";
import {
  areaText,
  chanceText,
  depthRange,
  depthText,
  distanceText,
  volumeText,
} from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { capital, Drawing, Fact, Section } from "../parts.tsx";
import { phaseToRigFor } from "./glance.tsx";
import { geoUri, positionText } from "./place.tsx";

/** A phone's width. */
const WIDTH = 344;

type Place = GuideLake["place"];

const Figures = ({ size, depths, sheet }: Pick<Place, "size" | "depths"> & { sheet: PageContext }) => {
  const { units } = sheet.guide.club;
  return (
    <>
      <Fact name="Area">{size === null ? null : areaText(size.area_ha, units)}</Fact>
      <Fact name="Shoreline">
        {size === null
          ? null
          : `${distanceText(size.shoreline_km * 1000, units)}${size.islands === 0 ? "" : `, ${size.islands} ${size.islands === 1 ? "island" : "islands"} in it`}`}
      </Fact>
      <Fact name="Depth">
        {depths === null
          ? null
          : `${depthText(depths.deepest_m, units)} at the deepest, ${depthText(depths.mean_m, units)} on average`}
      </Fact>
      <Fact name="Volume">{depths === null ? null : volumeText(depths.volume_m3, units)}</Fact>
    </>
  );
};

/** How much of the lake is how deep, and how much of it is to fish in each phase. */
const Shares = ({ depths, zones, sheet }: Pick<Place, "depths" | "zones"> & { sheet: PageContext }) => {
  const { units } = sheet.guide.club;
  if (depths === null) return null;
  const row = (name: string, share: number) => (
    <tr>
      <th scope="row">{name}</th>
      <td>{chanceText(share)}</td>
    </tr>
  );
  return (
    <table>
      <caption>Share of the lake’s area by depth</caption>
      <thead>
        <tr>
          <th scope="col">Depth</th>
          <th scope="col">Share</th>
        </tr>
      </thead>
      <tbody>
        {depths.bands.map(({ from_m, to_m, share }) => row(depthRange(from_m, to_m, units), share))}
      </tbody>
      <tbody>
        {zones.map(({ phase, from_m, to_m, share }) =>
          row(`${phaseName(phase)}: fish at ${depthRange(from_m, to_m, units)}`, share),
        )}
      </tbody>
    </table>
  );
};

const Marks = ({ map }: { map: NonNullable<Place["map"]> }) =>
  map.marks.length === 0 ? null : (
    <ul class="plain">
      {map.marks.map(({ mark, name, lat, lon }) => (
        <li>
          <a href={geoUri({ lat, lon })}>{capital(markText(mark, name))}</a>{" "}
          <span class="small">{positionText({ lat, lon })}</span>
        </li>
      ))}
    </ul>
  );

/** The lake drawn with what is known of its shape; nothing without a shoreline. */
export function MapSection({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { map, size, depths, zones } = lake.place;
  const { units } = sheet.guide.club;
  const phase = phaseToRigFor(lake);
  const phases = phase === undefined ? [] : [phase];
  const drawn = lakeMap(lake, { ink: screenInk, units, width: WIDTH, phases });
  if (map === null || drawn === null) return null;
  return (
    <Section title="Map" id="map">
      <div class="columns">
        <Drawing drawing={drawn.drawing} />
        <div class="in">
          <dl>
            <Figures size={size} depths={depths} sheet={sheet} />
          </dl>
          <Shares depths={depths} zones={zones} sheet={sheet} />
        </div>
      </div>
      {map.contoursBy === "soundings" ? (
        <p class="small">Depths are worked out from the club’s soundings: trust the lead, not the line.</p>
      ) : null}
      <Marks map={map} />
      <p>
        To take along: <a href={sheet.to(ADDRESS.marks(lake.slug))}>the marks</a> (GPX),{" "}
        <a href={sheet.to(ADDRESS.map(lake.slug))}>the map</a> (GeoJSON),{" "}
        <a href={geoUri(lake.position)}>the lake in a map app</a>. The map card, to print, is in{" "}
        <a href={sheet.to(ADDRESS.card(lake.slug))}>the lake’s PDF</a>. Not for navigation.
      </p>
    </Section>
  );
}
