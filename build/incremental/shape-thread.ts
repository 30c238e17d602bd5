import { type ComputedShape, computeShape, type ShapeInputs } from "../water/compose-shape.ts";
import { handleJobs } from "./threads.ts";

handleJobs(
  () =>
    async (batch: readonly ShapeInputs[]): Promise<ComputedShape[]> =>
      batch.map(computeShape),
);
