import { z } from "zod";
import { PHASE_WORDS, PHASES, type Phase } from "../phase.ts";

/** What the best weeks were called in files of older clubs; still read. */
export const OLD_WORD = "post-turnover";
export const NEW_WORD = "best-weeks";

/** Every word that is read for a state of an open lake. */
const READ_WORDS = [...PHASE_WORDS, OLD_WORD] as const;

const phaseOfWord = (word: (typeof READ_WORDS)[number]): Phase => (word === NEW_WORD ? OLD_WORD : word);

/** A state of an open lake by its word. */
export const phaseWord = (description: string) =>
  z.enum(READ_WORDS).transform(phaseOfWord).pipe(z.enum(PHASES)).meta({ description });
