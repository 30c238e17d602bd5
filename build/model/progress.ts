/** What a build does, one after another. */
export type Stage = "load" | "compute" | "pages" | "data" | "cards" | "publish";

/**
 * Told when a stage begins and after each of the things it makes.
 * @param done how many are made, 0 at the beginning
 * @param total how many there will be; 0 where that is not known
 */
export type Progress = (stage: Stage, done: number, total: number) => void;
