import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    // Every core: many tests wait for a browser or for a build in a process of its own.
    maxWorkers: "100%",
    // Modules keep no state (arrows.test.ts), so files share them; what a test stubs goes back after it.
    isolate: false,
    restoreMocks: true,
    unstubEnvs: true,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // Modules are run by Node as they are when the program is: the runner's own wrapping makes computing half as slow again.
    execArgv: ["--import", "tsx"],
    experimental: { viteModuleRunner: false, nodeLoader: false },
  },
});
