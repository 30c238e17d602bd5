/** One force of the Beaufort scale: mean wind over ten minutes, ten metres above open ground or water. */
export interface BeaufortForce {
  readonly force: number;
  readonly name: string;
  readonly least_mps: number;
  readonly most_mps: number;
  /** What the shore shows of it. */
  readonly sign: string;
}

/**
 * The forces a small boat has to decide about. Limits: WMO, Manual on Codes (WMO-No. 306), code table 1100. Signs: the
 * WMO land specifications in our own words.
 */
export const BEAUFORT = [
  {
    force: 3,
    name: "gentle breeze",
    least_mps: 3.4,
    most_mps: 5.4,
    sign: "leaves and twigs never rest; first crests break",
  },
  {
    force: 4,
    name: "moderate breeze",
    least_mps: 5.5,
    most_mps: 7.9,
    sign: "dust and loose paper fly, thin branches move; whitecaps here and there",
  },
  {
    force: 5,
    name: "fresh breeze",
    least_mps: 8,
    most_mps: 10.7,
    sign: "small trees in leaf sway; whitecaps everywhere",
  },
  {
    force: 6,
    name: "strong breeze",
    least_mps: 10.8,
    most_mps: 13.8,
    sign: "thick branches move, wires whistle; foam and spray",
  },
] as const satisfies readonly BeaufortForce[];
