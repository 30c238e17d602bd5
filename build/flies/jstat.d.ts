/** The two functions of the library that are used here; it comes without types. */
declare module "jstat" {
  interface Jstat {
    /** Shape and scale. */
    readonly gamma: { inv(chance: number, shape: number, scale: number): number };
    readonly beta: { inv(chance: number, alpha: number, beta: number): number };
  }
  const jstat: Jstat;
  export default jstat;
}
