/** The slips to report on: what each is, and its name under cards/. */
export const SLIPS = [
  ["Report slip to fill in by pencil, A6", "report-slip-a6"],
  ["Report slips, A4", "report-slips-a4"],
  ["Report slips, letter", "report-slips-letter"],
] as const;
