import type { Progress, Stage } from "../../build/model/progress.ts";

/** What a stretch of a run cost. */
export interface Cost {
  readonly seconds: number;
  /** Processor time of all threads. */
  readonly cpu_s: number;
  /** The most memory the process had ever held when the stretch was over. */
  readonly peak_MB: number;
}

export interface StageCost extends Cost {
  /** “start”: until the first stage, the loading of the program itself. */
  readonly stage: Stage | "start";
  /** How many things the stage made, where it counts them. */
  readonly made: number;
}

const cpu_s = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

const peakMemory_MB = (): number => Math.round(process.resourceUsage().maxRSS / 1024);

/** Begins to measure; the cost is counted from here on. */
export function startCost(): () => Cost {
  const [began_ms, began_s] = [performance.now(), cpu_s()];
  return () => ({
    seconds: (performance.now() - began_ms) / 1000,
    cpu_s: cpu_s() - began_s,
    peak_MB: peakMemory_MB(),
  });
}

/** Measures each stage from its beginning to the next one's. */
export function openStageWatch(): { readonly progress: Progress; close(): readonly StageCost[] } {
  const costs: StageCost[] = [];
  let stage: Stage | "start" = "start";
  let made = 0;
  let costSoFar = startCost();
  const end = (): void => void costs.push({ stage, made, ...costSoFar() });
  return {
    progress: (next, done) => {
      if (next !== stage) {
        end();
        stage = next;
        costSoFar = startCost();
      }
      made = done;
    },
    close: () => {
      end();
      return costs;
    },
  };
}
