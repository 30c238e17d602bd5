import { power } from "../../model/power.ts";
import type { Water } from "./water-properties.ts";

/** Drag coefficient of a line across the flow, `Cd = constant + twoThirds / Re^(2/3)`. */
export interface LineDragLaw {
  readonly constant: number;
  readonly twoThirds: number;
}

/** White, Viscous Fluid Flow (curve fit); measurements scatter by 10 to 20 %. */
export const CYLINDER_DRAG: LineDragLaw = { constant: 1, twoThirds: 10 };

function lineDragCoefficient(reynolds: number, { constant, twoThirds }: LineDragLaw): number {
  const root = Math.cbrt(reynolds);
  return constant + twoThirds / (root * root);
}

/**
 * Drag coefficient of a long cylinder across the flow.
 * @param reynolds above 0; fitted for 1 to 2e5
 */
export const cylinderDragCoefficient = (reynolds: number): number =>
  lineDragCoefficient(reynolds, CYLINDER_DRAG);

/**
 * Drag on a line across the flow, N/m, with the sign of the speed.
 * @param speed_mps across the line
 */
export function lineDrag_Npm(
  diameter_m: number,
  speed_mps: number,
  { density_kgm3, viscosity_m2s }: Water,
  law: LineDragLaw = CYLINDER_DRAG,
): number {
  if (speed_mps === 0) return 0;
  const reynolds = (Math.abs(speed_mps) * diameter_m) / viscosity_m2s;
  return (
    0.5 * density_kgm3 * lineDragCoefficient(reynolds, law) * diameter_m * speed_mps * Math.abs(speed_mps)
  );
}

/**
 * Drag coefficient of a sphere.
 * @param reynolds above 0, to 800
 * @source Schiller and Naumann (1935), as given by Clift, Grace and Weber (1978)
 */
export const schillerNaumann = (reynolds: number): number =>
  (24 / reynolds) * (1 + 0.15 * power(reynolds, 0.687));

/** Upper end of Schiller and Naumann's law, and the lower end of the standard curve used above it. */
const SCHILLER_NAUMANN_TO = 800;
const STANDARD_CURVE_FROM = 1500;
const STANDARD_CURVE_TO = 4.4e4;

/** Polynomials in log10 Re of log10 Cd, up to each Re. Clift, Grace and Weber (1978), Bubbles, Drops and Particles, table 5.2. */
const STANDARD_CURVE = [
  { to: 1.2e4, terms: [-2.4571, 2.5558, -0.9295, 0.1049] },
  { to: STANDARD_CURVE_TO, terms: [-1.9181, 0.637, -0.0636, 0] },
] as const;

function standardCurve(reynolds: number): number {
  const w = Math.log10(Math.min(reynolds, STANDARD_CURVE_TO));
  const piece = STANDARD_CURVE.find(({ to }) => reynolds <= to) ?? STANDARD_CURVE[1];
  const [a, b, c, d] = piece.terms;
  return power(10, a + w * (b + w * (c + w * d)));
}

/**
 * Drag coefficient of a smooth sphere: Schiller and Naumann to Re 800, the standard curve from Re 1500, a straight
 * line between (they differ by 5 % where they meet). Above Re 4.4e4, beyond any tackle, the last value is kept.
 * @param reynolds above 0
 */
export function sphereDragCoefficient(reynolds: number): number {
  if (reynolds <= SCHILLER_NAUMANN_TO) return schillerNaumann(reynolds);
  if (reynolds >= STANDARD_CURVE_FROM) return standardCurve(reynolds);
  const share = (reynolds - SCHILLER_NAUMANN_TO) / (STANDARD_CURVE_FROM - SCHILLER_NAUMANN_TO);
  return (1 - share) * schillerNaumann(SCHILLER_NAUMANN_TO) + share * standardCurve(STANDARD_CURVE_FROM);
}

/** Drag on a sphere, N, with the sign of the speed. */
export function sphereDrag_N(diameter_m: number, speed_mps: number, water: Water): number {
  if (speed_mps === 0) return 0;
  const area_m2 = (Math.PI / 4) * diameter_m ** 2;
  const coefficient = sphereDragCoefficient((Math.abs(speed_mps) * diameter_m) / water.viscosity_m2s);
  return 0.5 * water.density_kgm3 * coefficient * area_m2 * speed_mps * Math.abs(speed_mps);
}
