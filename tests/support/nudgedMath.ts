/** Functions of `Math` whose last bits the language leaves to the engine. */
export const ENGINE_FUNCTIONS = [
  'acos',
  'acosh',
  'asin',
  'asinh',
  'atan',
  'atan2',
  'atanh',
  'cbrt',
  'cos',
  'cosh',
  'exp',
  'expm1',
  'hypot',
  'log',
  'log10',
  'log1p',
  'log2',
  'pow',
  'sin',
  'sinh',
  'tan',
  'tanh',
] as const;

/** Does some work while every engine function is off by one unit in its last place, up and down by turns. */
export function withNudgedMath<T>(work: () => T): T {
  const engine = Object.fromEntries(ENGINE_FUNCTIONS.map((name) => [name, Math[name]]));
  let up = false;
  for (const name of ENGINE_FUNCTIONS) {
    const exact = Math[name] as (...values: number[]) => number;
    Reflect.set(Math, name, (...values: number[]) => {
      up = !up;
      return besides(exact(...values), up);
    });
  }
  try {
    return work();
  } finally {
    Object.assign(Math, engine);
  }
}

/** The number next to a number; zeros and what has no neighbours are kept. */
function besides(x: number, up: boolean): number {
  if (!Number.isFinite(x) || x === 0) return x;
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, x);
  bits.setBigInt64(0, bits.getBigInt64(0) + (up ? 1n : -1n));
  return bits.getFloat64(0);
}
