import { answerJobs } from "../threads/threads.ts";
import { type ComputedShape, computeShape, type ShapeInputs } from "../water/compose-shape.ts";

answerJobs(
  () =>
    async (batch: readonly ShapeInputs[]): Promise<ComputedShape[]> =>
      batch.map(computeShape),
);
