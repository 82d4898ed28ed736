import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.{ts,tsx}"],
    // The solver's watchdog tests wait for a real time-out of the engine.
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // Left to itself vitest keeps a core free, which on a machine with two means one file after the other.
    maxWorkers: "100%",
    globalSetup: ["test/support/build-once.ts"],
  },
});
