/** The plain data, part by part, that something is made of: of the same data the same is made. */
export type Needs = Readonly<Record<string, unknown>>;
