/**
 * Tables of the rig model as its reference implementation prints them, each value rounded; the boards, flies and shot
 * of `rig-vectors.json`.
 */
export const DEPTHS_FT = [3, 6, 9, 12, 15, 18, 21, 24] as const;

/** Tight-line waits, whole seconds, by plumbed depth. */
export const TIGHT_WAITS = [
  { fly: "beaded pupa", shot: "none", waits_s: [7, 34, 79, 134, 206, 286, 370, 477] },
  { fly: "beaded pupa", shot: "No. 4", waits_s: [4, 18, 41, 71, 104, 146, 193, 245] },
  { fly: "beaded pupa", shot: "BB", waits_s: [3, 12, 28, 48, 69, 97, 129, 163] },
  { fly: "beaded pupa", shot: "2 x BB", waits_s: [2, 9, 20, 34, 48, 67, 89, 111] },
  { fly: "balanced leech", shot: "none", waits_s: [3, 12, 29, 48, 71, 100, 133, 169] },
] as const;

/** Shot for calm, ripple and chop; for the pupa also the mended lift, expected to doubtful, whole centimetres. */
export const SHOT_TABLE = [
  { ft: 3, leech: "none / none / none", unweighted: "none / No. 4 / No. 4", lifts_cm: "0-1, 4-6, 5-9" },
  { ft: 6, leech: "none / none / none", unweighted: "none / No. 4 / BB", lifts_cm: "2-5, 2-5, 12-27" },
  { ft: 9, leech: "none / none / none", unweighted: "No. 4 / No. 4 / 2 x BB", lifts_cm: "3-14, 5-16, 8-26" },
  { ft: 12, leech: "none / none / BB", unweighted: "No. 4 / BB / BB hold", lifts_cm: "1-4, 3-10, 6-20" },
  { ft: 15, leech: "none / none / BB", unweighted: "BB / BB / BB hold", lifts_cm: "0-2, 3-14, 7-25" },
  {
    ft: 18,
    leech: "No. 4 / No. 4 / 2 x BB",
    unweighted: "2 x BB / 2 x BB / 2 x BB hold",
    lifts_cm: "0-1, 2-8",
  },
  {
    ft: 21,
    leech: "2 x BB / 2 x BB / 2 x BB hold",
    unweighted: "2 x BB / 2 x BB / 2 x BB hold",
    lifts_cm: "0-2, 2-14",
  },
  {
    ft: 24,
    leech: "2 x BB / 2 x BB / 2 x BB hold",
    unweighted: "2 x BB / 2 x BB / 2 x BB hold",
    lifts_cm: "0-2, 3-19",
  },
] as const;

/** Longest sets of the pupa drawn by a drifting boat, ft to the tenth, 9 ft rod, Deep board; null is more than 24 ft. */
export const DRAWN_SETS = {
  rod_s: [120, 90, 60, 45, 30, 20],
  rows: [
    { shot: "none", sets_ft: [6.1, 4.7, 3.2, 2.5, 1.7, 1.3] },
    { shot: "No. 4", sets_ft: [12.5, 9.4, 6.2, 4.5, 2.6, 1.3] },
    { shot: "BB", sets_ft: [18.8, 14.2, 9.4, 6.7, 3.6, 1.3] },
    { shot: "2 x BB", sets_ft: [null, 20.6, 13.7, 9.8, 5.1, 1.3] },
  ],
} as const;

/** Depth of the end of a 15 ft tip of 3 in/s left to sink, ft. */
export const TIP_SINKS = [
  { seconds: 10, depth_ft: 2.5 },
  { seconds: 30, depth_ft: 7.5 },
  { seconds: 60, depth_ft: 14.0 },
  { seconds: 111.3, depth_ft: 15 },
] as const;

/** The same drawn, and a 10 ft tip, ft. */
export const TIP_DRAWN = [
  { tip_ft: 15, speed_cmps: 5, depth_ft: 13.9 },
  { tip_ft: 15, speed_cmps: 10, depth_ft: 9.9 },
  { tip_ft: 15, speed_cmps: 20, depth_ft: 5.5 },
  { tip_ft: 10, speed_cmps: 5, depth_ft: 9.3 },
  { tip_ft: 10, speed_cmps: 10, depth_ft: 6.6 },
  { tip_ft: 10, speed_cmps: 20, depth_ft: 3.7 },
] as const;

/** Depth of a fly counted to 9 ft on a 50 ft cast, with 3/4, 1/2 and 0.3 of the line out, whole feet. */
export const RETRIEVES = [
  { speed_cmps: 10, rate_ips: 1.5, depths_ft: [11, 11, 10] },
  { speed_cmps: 10, rate_ips: 3, depths_ft: [15, 18, 14] },
  { speed_cmps: 10, rate_ips: 6, depths_ft: [23, 24, 15] },
  { speed_cmps: 20, rate_ips: 1.5, depths_ft: [9, 8, 6] },
  { speed_cmps: 20, rate_ips: 3, depths_ft: [11, 11, 10] },
  { speed_cmps: 20, rate_ips: 6, depths_ft: [15, 18, 14] },
] as const;

/** Naked line of the Usual long board: ft and degrees to the water by the speed of draw, cm/s. */
export const NAKED_LINES = [
  { fly: "unweighted", ft: 15, at: { 1: [13.0, 51], 2: [8.7, 27], 3: [6.0, 19], 5: [3.5, 13] } },
  { fly: "beaded pupa", ft: 15, at: { 1: [14.4, 64], 2: [11.9, 36], 3: [9.2, 22], 5: [5.7, 12] } },
  { fly: "balanced leech", ft: 15, at: { 1: [15, 83], 2: [14.8, 73], 3: [14.3, 60], 5: [12.6, 37] } },
  { fly: "beaded pupa", ft: 20, at: { 1: [18.8, 63], 2: [14.9, 38], 3: [11.2, 26], 5: [6.9, 17] } },
] as const;

/** Weightless line: angle to the water against depth over length, asinh(cot)/cot (closed form). */
export const WEIGHTLESS_ANGLES = [
  { angle_deg: 60, share: 0.95 },
  { angle_deg: 45, share: 0.88 },
  { angle_deg: 30, share: 0.76 },
  { angle_deg: 20, share: 0.63 },
  { angle_deg: 10, share: 0.43 },
] as const;
