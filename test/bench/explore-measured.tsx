import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { Box, Text, useInput } from "ink";
import { useState } from "react";
import { unicodeGlyphs } from "../../tui/content/glyphs.ts";
import { createSolver } from "../../tui/solver/solver.ts";
import { createFrameWriter } from "../../tui/terminal/frame-writer.ts";
import { fakeStdin, openScreen, renderTo, type Screen } from "../tui/support/screen.tsx";

export interface Plan {
  readonly columns: number;
  readonly rows: number;
  readonly keys: number;
  readonly round: readonly string[];
  /** From a frame to the next key; 0 is as fast as the program can hear. */
  readonly restMs: number;
}

interface Measured {
  readonly medianMs: number;
  readonly p95Ms: number;
  readonly bareMedianMs: number;
  readonly bareP95Ms: number;
}

const patienceMs = 5_000;

export async function measureSample(text: string, plan: Plan): Promise<Measured> {
  const frames: string[] = [];
  const ours = await timed(text, plan, (screen) => {
    if (frames.length < 2) frames.push(screen.styled());
  });
  const bare = await timedBare(frames, plan);
  return {
    medianMs: quantile(ours, 0.5),
    p95Ms: quantile(ours, 0.95),
    bareMedianMs: quantile(bare, 0.5),
    bareP95Ms: quantile(bare, 0.95),
  };
}

/** Heap after a collection, once the program is warm and again after all the keys. */
export async function measureMemory(text: string, plan: Plan) {
  const warm = plan.round.length * 50;
  let beforeMb = 0;
  let count = 0;
  await timed(text, { ...plan, keys: plan.keys + warm }, () => {
    count++;
    if (count === warm) beforeMb = heapMb();
  });
  return { keys: plan.keys, beforeMb, afterMb: heapMb() };
}

async function timed(
  text: string,
  plan: Plan,
  pressed: (screen: Screen) => void,
): Promise<readonly number[]> {
  const frame = createSignal();
  const screen = openScreen(
    plan.columns,
    plan.rows,
    { glyphs: unicodeGlyphs, colour: true, form: "screen" },
    frame.give,
  );
  const solver = createSolver(
    (report) => {
      if (report.kind !== "started") screen.store.send(report);
    },
    (_sequence, reason) => {
      throw new Error(reason);
    },
  );
  const asked = () => {
    for (const effect of screen.effects.splice(0)) if (effect.kind === "solve") solver.ask(effect);
  };
  await screen.tell({ kind: "opened", file: "sample.yaml", text });
  asked();
  await settled(screen);
  const times: number[] = [];
  for (let index = 0; index < plan.keys; index++) {
    const drawn = frame.next();
    const started = performance.now();
    screen.stdin.push(plan.round[index % plan.round.length]!);
    await inTime(drawn, plan.round[index % plan.round.length]!);
    times.push(performance.now() - started);
    asked();
    pressed(screen);
    await rest(plan.restMs);
  }
  screen.close();
  await solver.close();
  return times;
}

async function settled({ store }: Screen): Promise<void> {
  const deadline = Date.now() + patienceMs;
  while (store.state().garment?.solving.underWay && Date.now() < deadline)
    await new Promise((resolve) => setTimeout(resolve, 10));
}

/** An app that does nothing but draw two frames in turn, a row as one string. */
function Bare({ frames }: { readonly frames: readonly string[] }) {
  const [turn, setTurn] = useState(0);
  useInput(() => setTurn((before) => before + 1));
  return (
    <Box flexDirection="column">
      {(frames[turn % frames.length] ?? "").split("\n").map((row, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place and nothing else.
        <Text key={index} wrap="truncate">
          {row}
        </Text>
      ))}
    </Box>
  );
}

async function timedBare(frames: readonly string[], plan: Plan): Promise<readonly number[]> {
  const frame = createSignal();
  const stdin = fakeStdin();
  const size = () => ({ columns: plan.columns, rows: plan.rows });
  const { stdout } = createFrameWriter(frame.give, size);
  const instance = renderTo(stdout, stdin, <Bare frames={frames} />);
  await new Promise((resolve) => setTimeout(resolve, 50));
  const times: number[] = [];
  for (let index = 0; index < plan.keys; index++) {
    const drawn = frame.next();
    const started = performance.now();
    stdin.push("x");
    await inTime(drawn, "x");
    times.push(performance.now() - started);
    await rest(plan.restMs);
  }
  instance.unmount();
  return times;
}

/** A key that changes no frame would be waited for for ever. */
async function inTime(drawn: Promise<void>, key: string): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error(`no frame came for the key ${key}`)), patienceMs);
  });
  await Promise.race([drawn, late]);
  clearTimeout(timer);
}

const rest = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    if (ms === 0) setImmediate(resolve);
    else setTimeout(resolve, ms);
  });

/** Something that happens again and again and is waited for once at a time. */
function createSignal() {
  let give: () => void = () => {};
  return {
    give: () => give(),
    next: () =>
      new Promise<void>((resolve) => {
        give = resolve;
      }),
  };
}

function quantile(times: readonly number[], part: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
}

function heapMb(): number {
  setFlagsFromString("--expose-gc");
  const collect: unknown = runInNewContext("gc");
  if (typeof collect === "function") collect();
  return process.memoryUsage().heapUsed / 1e6;
}
