/** What may be on the water, the one that has to come in first first. */
const CRAFT = ["Float tubes and pontoons", "Canoes and kayaks", "Small open boats"] as const;

/** From the least to the most that wind and waves ask of a craft. None of them says that it is safe. */
const ADVICE = ["keep close to shore", "keep to the sheltered shore", "be ashore"] as const;

/**
 * What each craft is told at each force on a lake too small for waves to matter. Common practice, no published source;
 * force 5 is where the US National Weather Service begins to issue lake wind advisories (from memory).
 */
const BY_FORCE: Readonly<Record<number, readonly [float: number, canoe: number, boat: number]>> = {
  3: [1, 0, 0],
  4: [2, 1, 1],
  5: [2, 2, 2],
  6: [2, 2, 2],
};

/** Waves of this height take every craft one step further. Common practice, no published source. */
const ROUGH_M = 0.3;

/**
 * What float tubes, canoes and small open boats should do, in one sentence a group of craft told the same.
 * @param force 3 to 6
 * @param height_m the highest waves to expect anywhere on the lake
 */
export function boatWords(force: number, height_m: number): string {
  const step = height_m >= ROUGH_M ? 1 : 0;
  const told = (BY_FORCE[force] ?? [2, 2, 2]).map(
    (advice) => ADVICE[Math.min(advice + step, 2)] ?? ADVICE[2],
  );
  if (told.every((advice) => advice === ADVICE[2])) return "Everybody: be ashore.";
  return ADVICE.flatMap((advice) => {
    const craft = CRAFT.filter((_, i) => told[i] === advice).map((name, i) =>
      i === 0 ? name : name.toLowerCase(),
    );
    return craft.length === 0 ? [] : [`${craft.join(", ")}: ${advice}.`];
  })
    .reverse()
    .join(" ");
}
