import { forgetUnsaved, rememberUnsaved } from "../../src/state/unsaved.ts";

/** Keeps unsaved changes on disk; of changes that come faster than the disk only the newest is written. */
export interface Keeper {
  readonly keep: (file: string, base: string, text: string) => void;
  readonly forget: (file: string) => void;
  /** Resolves once everything asked for is on disk. */
  readonly settled: () => Promise<void>;
}

export function createKeeper(stateFolder: string): Keeper {
  let wanted: (() => Promise<unknown>) | undefined;
  let running: Promise<void> | undefined;

  async function run(): Promise<void> {
    for (let task = wanted; task !== undefined; task = wanted) {
      wanted = undefined;
      await task();
    }
    running = undefined;
  }

  const want = (task: () => Promise<unknown>): void => {
    wanted = task;
    running ??= run();
  };

  return {
    keep: (file, base, text) => want(() => rememberUnsaved(stateFolder, file, base, text)),
    forget: (file) => want(() => forgetUnsaved(stateFolder, file)),
    settled: async () => running,
  };
}
