import type { RigBox } from "../../model/club.ts";
import { rounded, smallLengthText, temperatureText, type UnitSystem } from "../../model/units.ts";
import { USUAL_CAST_M } from "../cast-rig.ts";
import { FLY_BALLS, FLY_CLASSES, TABLE_FLY } from "../fly-classes.ts";
import { usualRigs } from "../lake-rigs.ts";
import { leaderOf } from "../leaders/leader.ts";
import { suggestedTippet, TIPPET_SIZES, tippetDiameter_mm, tippetSizeText } from "../leaders/tippet.ts";
import { holdingSpeed_mps } from "../physics/sinking-line.ts";
import type {
  AtAnchor,
  DriftingTable,
  Leader,
  LeanExample,
  Line,
  NakedTable,
  PlumbTable,
  SwingTable,
  Tippet,
  TippetForHook,
  UsualRig,
} from "../rig-schemas.ts";
import { atAnchor, swingTable } from "./at-anchor.ts";
import { conditionColumns } from "./conditions.ts";
import { driftingTable } from "./drifting-boat.ts";
import { leanExample } from "./lean-example.ts";
import { type FlyLine, lineCount } from "./line-counts.ts";
import { nakedTable } from "./naked-line.ts";
import { plumbDepth, plumbDepths_m, TABLE_WATER_C } from "./plumb-table.ts";

/** A line's counts; a line that floats, or whose rate or tip is not known, has none. */
function lineOf(line: FlyLine, longestCount_s: number, units: UnitSystem): Line {
  const { name, kind, sinkRate_mps, tip_m } = line;
  const isKnown = sinkRate_mps !== undefined && (kind !== "sink tip" || tip_m !== undefined);
  return {
    name,
    kind,
    sinkRate_mps: sinkRate_mps ?? null,
    tip_m: tip_m ?? null,
    counts:
      kind === "floating" || !isKnown
        ? []
        : plumbDepths_m(units).map((depth_m) => {
            const count = lineCount(line, depth_m, longestCount_s);
            return {
              depth_m,
              seconds: count.seconds,
              long: count.seconds !== null && count.long,
              hold_mps:
                count.seconds === null || kind === "sink tip"
                  ? null
                  : holdingSpeed_mps({ depth_m, out_m: USUAL_CAST_M }, sinkRate_mps),
            };
          }),
  };
}

/** Hook sizes of the tippet table. */
const HOOKS: readonly number[] = [6, 8, 10, 12, 14, 16, 18];
/** Water clearer, and cloudier, than ordinary, Secchi depth, m. */
const CLEARER_M = 6;
const CLOUDIER_M = 1;

/** The plumb-and-go table: computed once for a box, never for a lake. */
export function plumbTable(box: RigBox, units: UnitSystem): PlumbTable {
  return {
    fly: TABLE_FLY,
    water_C: TABLE_WATER_C,
    columns: conditionColumns(box.rod_m),
    depths: plumbDepths_m(units).map((depth_m) => plumbDepth(depth_m, FLY_CLASSES, box, units)),
    scope: { ...box.scope, bow_m: box.bow_m },
    assumes: [
      `A ${TABLE_FLY} of ${rounded(FLY_BALLS[TABLE_FLY].mass_g, 2)} g; a leech counts from 0.3 g, anything under 0.06 g as unweighted. A heavier fly needs a step less.`,
      `The fly hangs at most ${smallLengthText(box.lift_m, units)} higher than straight down in the current that is expected, ${smallLengthText(box.mostLift_m, units)} in the worst that is likely.`,
      `The indicator rides free on slack line, and the line is mended before it draws tight. Water of ${temperatureText(TABLE_WATER_C, units)} that slows with depth over an even bottom; in narrows and inlets it does not.`,
    ],
    check:
      "A planning aid, timed on no real lake. Check: hang a weighted bag at the fly's depth under a cork and time it against the foam; lower the rig beside the boat. If the leader streams away from a held indicator, or the boat sheers about and tows its rigs, one step more.",
  };
}

/** The tables of the rig page and the rig cards. */
export interface RigTables {
  readonly tippet: Tippet[];
  readonly tippetFor: TippetForHook[];
  readonly leaders: Leader[];
  readonly lines: Line[];
  readonly ways: UsualRig[];
  readonly plumb: PlumbTable;
  readonly drifting: DriftingTable | null;
  readonly lean: LeanExample | null;
  readonly naked: NakedTable;
  readonly swing: SwingTable;
  readonly anchor: AtAnchor;
}

/**
 * All tables that follow from the box alone.
 * @param box free of the errors that `rigDiagnostics` finds
 * @throws RangeError for a leader with a size that is none
 */
export function rigTables(box: RigBox, units: UnitSystem): RigTables {
  const plumb = plumbTable(box, units);
  return {
    tippet: TIPPET_SIZES.map((size) => ({
      size: tippetSizeText(size),
      diameter_mm: tippetDiameter_mm(size),
    })),
    tippetFor: HOOKS.map((hook) => ({
      hook,
      clear: tippetSizeText(suggestedTippet(hook, CLEARER_M)),
      ordinary: tippetSizeText(suggestedTippet(hook)),
      cloudy: tippetSizeText(suggestedTippet(hook, CLOUDIER_M)),
    })),
    leaders: box.leaders.map((leader) => leaderOf(leader, box.margin_m, units)),
    lines: box.lines.map((line) => lineOf(line, box.longestCount_s, units)),
    ways: usualRigs(box, units),
    plumb,
    drifting: driftingTable(box, units),
    lean: leanExample(plumb.depths, box),
    naked: nakedTable(box),
    swing: swingTable(box),
    anchor: atAnchor(),
  };
}
