/** The same record with its undefined values optional. */
type Present<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** Leaves out the keys that have no value. */
export const present = <T extends object>(record: T): Present<T> =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as Present<T>;
