import type { Guide, GuideLake } from "../../../build/guide/guide-schema.ts";
import { ADDRESS } from "../../../build/model/addresses.ts";
import type { Method } from "../../../build/model/club.ts";
import { depthRange, depthText, rounded } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Fact } from "../parts.tsx";

/** What to fish in one phase of one lake. */
export type PhasePlan = GuideLake["plan"][number];
/** One way of fishing it. */
export type Rig = PhasePlan["rigs"][number];

type Units = Guide["club"]["units"];

/** "8–12 ft"; null where the rig has no set depth. */
export const setDepthText = ({ setDepth }: Rig, units: Units): string | null =>
  setDepth === null ? null : depthRange(setDepth.from_m, setDepth.to_m, units);

/** "16–30 s". */
export function countdownText({ countdown }: Rig): string | null {
  if (countdown === null) return null;
  const from = rounded(countdown.from_s);
  const long = countdown.long ? ", long" : "";
  if (countdown.to_s === null) return `${from} s at the shallow end${long}`;
  const to = rounded(countdown.to_s);
  return `${from === to ? from : `${from}–${to}`} s${long}`;
}

/** Whether the indicator may be fixed, in words that say what to do. */
export const landingText = ({ landing }: Rig): string | null =>
  landing === null ? null : landing === "slip" ? "slip indicator" : "fixed indicator";

/** "8–12 ft, plumbed by the club". */
export const bandText = ({ band }: PhasePlan, units: Units): string =>
  `${band.from_m === 0 ? `down to ${depthText(band.to_m, units)}` : depthRange(band.from_m, band.to_m, units)}, ${
    band.source === "club" ? "plumbed by the club" : "the usual depth, not plumbed here"
  }`;

/** Where on the rigs page a leader stands; undefined for a name that is not there. */
export function leaderId({ rigs }: Pick<Guide, "rigs">, name: string): string | undefined {
  const place = rigs.leaders.findIndex((leader) => leader.name === name);
  return place < 0 ? undefined : `leader-${place + 1}`;
}

/** Where on the rigs page a way of fishing stands. */
export const methodId = (way: Method): string => `way-${way.replaceAll(" ", "-")}`;

function Leader({ name, sheet }: { name: string; sheet: PageContext }) {
  const id = leaderId(sheet.guide, name);
  if (id === undefined) return <span>{name}</span>;
  const page = sheet.address === ADDRESS.rigs ? "" : sheet.to(ADDRESS.rigs);
  return <a href={`${page}#${id}`}>{name}</a>;
}

/** A way of fishing: how deep, with what, and how to know on the water that it is right. */
export function RigFacts({ rig, sheet }: { rig: Rig; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  const depth = setDepthText(rig, units);
  const landing = landingText(rig);
  return (
    <dl>
      <Fact name="Set">{depth === null ? null : <strong>{depth}</strong>}</Fact>
      <Fact name="Fly at">
        {depth !== null || rig.fly === null ? null : (
          <strong>{depthRange(rig.fly.from_m, rig.fly.to_m, units)}</strong>
        )}
      </Fact>
      <Fact name="Leader">
        {rig.leader === null ? null : (
          <>
            <Leader name={rig.leader} sheet={sheet} />
            {landing === null ? "" : `, ${landing}`}
          </>
        )}
      </Fact>
      <Fact name="Line">{rig.line}</Fact>
      <Fact name="Count">{rig.countdown === null ? null : <strong>{countdownText(rig)}</strong>}</Fact>
      <Fact name="Draw">{rig.draw}</Fact>
      <Fact name="Check">{rig.check}</Fact>
      <Fact name="Not covered">{rig.uncovered}</Fact>
    </dl>
  );
}
