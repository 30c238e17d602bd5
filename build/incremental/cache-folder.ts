import path from "node:path";

/** What is asked of the machine to find its cache folder. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** The user's home folder; empty when there is none. */
  readonly home: string;
}

const OWN = "lake-season-guide";

/** Only a whole path counts, as the XDG Base Directory Specification asks. */
const whole = (dir: string | undefined, { isAbsolute }: path.PlatformPath): string | undefined =>
  dir !== undefined && isAbsolute(dir) ? dir : undefined;

/** Where this operating system keeps what a program can make again; undefined where it has no such place. */
export function cacheFolder({ platform, env, home }: Machine): string | undefined {
  const paths = platform === "win32" ? path.win32 : path.posix;
  const atHome = (...parts: string[]): string | undefined =>
    whole(home, paths) === undefined ? undefined : paths.join(home, ...parts);
  const { LOCALAPPDATA: local, XDG_CACHE_HOME: xdg } = env;
  const caches =
    platform === "win32"
      ? whole(local, paths)
      : platform === "darwin"
        ? atHome("Library", "Caches")
        : (whole(xdg, paths) ?? atHome(".cache"));
  return caches === undefined ? undefined : paths.join(caches, OWN);
}
