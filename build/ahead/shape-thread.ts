import { answerJobs } from "../threads/threads.ts";
import { type ReckonedShape, reckonShape, type ShapeNeeds } from "../water/compose-shape.ts";

answerJobs(
  () =>
    async (batch: readonly ShapeNeeds[]): Promise<ReckonedShape[]> =>
      batch.map(reckonShape),
);
