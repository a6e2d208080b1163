/** Keeps results alive, so that nothing is optimised away. */
export const sink: { last: unknown } = { last: undefined };

/** Median over the runs of each of several jobs, which take turns so that a disturbance hits all alike; ms. */
export function medians(
  jobs: Readonly<Record<string, () => unknown>>,
  warmUp: number,
  runs: number,
): Record<string, number> {
  const times: Record<string, number[]> = Object.fromEntries(Object.keys(jobs).map((name) => [name, []]));
  for (let i = 0; i < warmUp + runs; i++)
    for (const [name, job] of Object.entries(jobs)) {
      const start = performance.now();
      sink.last = job();
      if (i >= warmUp) times[name]!.push(performance.now() - start);
    }
  return Object.fromEntries(
    Object.entries(times).map(([name, list]) => [
      name,
      list.sort((a, b) => a - b)[Math.floor(list.length / 2)]!,
    ]),
  );
}
