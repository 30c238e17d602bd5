import type { DayRange } from "../../model/club.ts";

/** What the states after ice-off follow from, beside the ice-off day itself. */
export interface LakeTraits {
  /** Degrees; the sign is ignored. */
  readonly latitude_deg: number;
  readonly elevation_m?: number;
  readonly area_ha?: number;
  readonly meanDepth_m?: number;
  readonly maxDepth_m?: number;
  /** The lake's ice-off in a middling spring, day of season, and the variance of that day. */
  readonly usualIceOff: number;
  readonly usualIceOffVariance?: number;
  /** The club's word on whether it stratifies in summer; left to its depth where absent. */
  readonly stratifies?: boolean;
  readonly turnsOver: boolean;
  /** A snow or glacier stream runs through it. */
  readonly fedBySnow: boolean;
  /** Days from ice-off to the onset of turnover. */
  readonly onset: DayRange;
  /** The club's own rule for the first clear day, days after ice-off. */
  readonly clearRule?: number;
}

/** Days after ice-off are followed from 0 to this one. */
export const LAST_DAY = 150;
export const DAYS = LAST_DAY + 1;

/** Area of a lake that does not say it, and the range that the fit is carried over, ha. */
const USUAL_AREA_HA = 20;
const AREA_RANGE_HA = { from: 0.5, to: 4000 };

/** Surface area within the range that the model knows, ha. */
export const areaOf = ({ area_ha }: Pick<LakeTraits, "area_ha">): number =>
  Math.min(AREA_RANGE_HA.to, Math.max(AREA_RANGE_HA.from, area_ha ?? USUAL_AREA_HA));

/** Area to which the fitted curves refer, ha. */
export const REFERENCE_AREA_HA = 20;
