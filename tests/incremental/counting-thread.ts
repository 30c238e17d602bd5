import { handleJobs } from "../../build/incremental/threads.ts";

/** Doubles numbers, later ones sooner; tells of each; some it cannot do. */
handleJobs(
  ({ unlucky }: { readonly unlucky: number }) =>
    async (job: number, tell: (told: string) => void) => {
      await new Promise((resolve) => setTimeout(resolve, job % 2 === 0 ? 20 : 0));
      if (job === unlucky) throw new RangeError(`${job} cannot be doubled`);
      if (job < 0) process.exit(0);
      tell(`doubled ${job}`);
      return 2 * job;
    },
);
