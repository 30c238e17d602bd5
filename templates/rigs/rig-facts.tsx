import { depthRange } from "../../build/model/units.ts";
import { countdownText, holdText, type Rig, setDepthText } from "../lake/rig-words.ts";
import { Fact } from "../parts.tsx";
import { ADDRESS, type Sheet } from "../sheet.ts";
import { leaderId } from "./places.ts";

function Leader({ name, sheet }: { name: string; sheet: Sheet }) {
  const id = leaderId(sheet.guide, name);
  if (id === undefined) return <span>{name}</span>;
  const page = sheet.address === ADDRESS.rigs ? "" : sheet.to(ADDRESS.rigs);
  return <a href={`${page}#${id}`}>{name}</a>;
}

/** A way of fishing: how deep, with what, and how to know on the water that it is right. */
export function RigFacts({ rig, sheet }: { rig: Rig; sheet: Sheet }) {
  const { units } = sheet.guide.club;
  const depth = setDepthText(rig, units);
  const hold = holdText(rig);
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
            {hold === null ? "" : `, ${hold}`}
          </>
        )}
      </Fact>
      <Fact name="Line">{rig.line}</Fact>
      <Fact name="Count">{rig.countdown === null ? null : <strong>{countdownText(rig)}</strong>}</Fact>
      <Fact name="Check">{rig.check}</Fact>
      <Fact name="Not covered">{rig.uncovered}</Fact>
    </dl>
  );
}
