import { randomUUID } from "node:crypto";
import { closeSync, openSync, readFileSync, rmSync, writeFileSync, writeSync } from "node:fs";
import { hostname } from "node:os";
import { setTimeout as sleep } from "node:timers/promises";

/** Who holds a lock, as written in its file. */
interface Holder {
  readonly pid: number;
  readonly host: string;
  /** When the process began, in the machine's own count; "" where the system does not tell. */
  readonly birth: string;
}

/** A lock that is held until it is let go or its process ends. */
export interface OutputLock {
  /** False once somebody took the file away or wrote another name in it. */
  isHeld(): boolean;
  release(): void;
}

/** Another living build holds the output. */
export class OutputHeld extends Error {
  override readonly name = "OutputHeld";
}

const POLL_MS = 100;
/** Longer than it takes to write a lock file, and than two calls that follow each other. */
const SETTLE_MS = 50;

const isCode = (error: unknown, code: string): boolean =>
  error instanceof Error && "code" in error && error.code === code;

/** Undefined when there is no such file. @throws a system error when it cannot be read */
const textOf = (file: string): string | undefined => {
  try {
    return readFileSync(file, "utf8");
  } catch (error) {
    if (isCode(error, "ENOENT")) return undefined;
    throw error;
  }
};

/** When a living process began; undefined when it has ended, be it unreaped. Linux: proc(5), fields 3 and 22 of stat. */
function processStartTime(pid: number): string | undefined {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if (isCode(error, "ESRCH")) return undefined;
  }
  const stat = textOf(`/proc/${pid}/stat`);
  if (stat === undefined) return "";
  const [state, ...fields] = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
  if (state === "Z" || state === "X") return undefined;
  return `${textOf("/proc/sys/kernel/random/boot_id")?.trim()} ${fields[18]}`;
}

function holderIn(text: string): Holder | undefined {
  try {
    const { pid, host, birth } = JSON.parse(text) as Partial<Record<keyof Holder, unknown>>;
    if (typeof pid === "number" && typeof host === "string" && typeof birth === "string")
      return { pid, host, birth };
  } catch {
    // Cut off: its writer was killed, or is not done yet.
  }
  return undefined;
}

/** A process of another machine cannot be looked for, and counts as living. */
const isLiving = ({ pid, host, birth }: Holder): boolean =>
  host !== hostname() || processStartTime(pid) === birth;

/** Writes a file that must be new; false when it is there already. */
function wroteNew(file: string, text: string): boolean {
  let fd: number;
  try {
    fd = openSync(file, "wx");
  } catch (error) {
    if (isCode(error, "EEXIST")) return false;
    throw error;
  }
  try {
    writeSync(fd, text);
  } catch (error) {
    rmSync(file, { force: true });
    throw error;
  } finally {
    closeSync(fd);
  }
  return true;
}

const heldBy = (file: string, { pid, host }: Holder): OutputHeld =>
  new OutputHeld(
    host === hostname()
      ? `another build is writing it: process ${pid}. Run the command again when that has ended`
      : `another build is writing it: process ${pid} on ${host}. Run the command again when that has ended; if it ended long ago, delete ${file}`,
  );

/**
 * Takes the lock at `file`. A lock whose process has ended is taken over at once.
 * @param patience_ms how long to wait for a living holder
 * @throws OutputHeld when it is still held then; a system error when the file cannot be written
 */
export async function takeLock(file: string, patience_ms: number): Promise<OutputLock> {
  const mine = JSON.stringify({
    pid: process.pid,
    host: hostname(),
    birth: processStartTime(process.pid),
    id: randomUUID(),
  });
  const lock: OutputLock = {
    isHeld: () => textOf(file) === mine,
    release: () => {
      if (textOf(file) === mine) rmSync(file, { force: true });
    },
  };
  const end_ms = performance.now() + patience_ms;
  while (!wroteNew(file, mine)) {
    const found = textOf(file);
    if (found === undefined) continue;
    const holder = holderIn(found);
    if (holder !== undefined && isLiving(holder)) {
      if (performance.now() >= end_ms) throw heldBy(file, holder);
      await sleep(POLL_MS);
      continue;
    }
    // Of several that find a dead holder the last to write keeps the lock: each looks again after a while.
    await sleep(SETTLE_MS);
    if (textOf(file) !== found) continue;
    writeFileSync(file, mine);
    await sleep(SETTLE_MS);
    if (lock.isHeld()) break;
  }
  return lock;
}
