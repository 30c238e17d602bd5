/** WGS 84 (NIMA TR8350.2): equatorial radius and first eccentricity squared. */
export const EQUATOR_M = 6_378_137;
export const ECCENTRICITY_2 = 0.00669437999014;
