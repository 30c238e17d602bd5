import { describe, expect, test } from "vitest";
import { cacheFolder, type Machine } from "../../build/incremental/cache-folder.ts";

/** XDG Base Directory Specification 0.8; Apple, File System Programming Guide; Microsoft, KNOWNFOLDERID LocalAppData. */
const PLACES: readonly [string, Machine, string | undefined][] = [
  ["Linux", { platform: "linux", env: {}, home: "/home/ann" }, "/home/ann/.cache/lake-season-guide"],
  [
    "XDG_CACHE_HOME",
    { platform: "linux", env: { XDG_CACHE_HOME: "/var/tmp/ann" }, home: "/home/ann" },
    "/var/tmp/ann/lake-season-guide",
  ],
  [
    "XDG_CACHE_HOME that is not a whole path is ignored",
    { platform: "linux", env: { XDG_CACHE_HOME: "cache" }, home: "/home/ann" },
    "/home/ann/.cache/lake-season-guide",
  ],
  [
    "XDG_CACHE_HOME that is empty is ignored",
    { platform: "linux", env: { XDG_CACHE_HOME: "" }, home: "/home/ann" },
    "/home/ann/.cache/lake-season-guide",
  ],
  [
    "macOS",
    { platform: "darwin", env: {}, home: "/Users/ann" },
    "/Users/ann/Library/Caches/lake-season-guide",
  ],
  [
    "Windows",
    { platform: "win32", env: { LOCALAPPDATA: "C:\\Users\\ann\\AppData\\Local" }, home: "C:\\Users\\ann" },
    "C:\\Users\\ann\\AppData\\Local\\lake-season-guide",
  ],
  ["Windows without LOCALAPPDATA", { platform: "win32", env: {}, home: "C:\\Users\\ann" }, undefined],
  ["no home", { platform: "linux", env: {}, home: "" }, undefined],
];

describe("where results are kept", () => {
  test.each(PLACES)("%s", (_, machine, place) => {
    expect(cacheFolder(machine)).toBe(place);
  });
});
