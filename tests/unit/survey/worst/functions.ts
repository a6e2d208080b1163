// Test functions of global optimisation with their published minima. Written from memory of: L. C. W. Dixon
// and G. P. Szegö (editors), Towards Global Optimisation 2, North-Holland 1978 (Branin, Hartmann 6);
// D. H. Ackley, A Connectionist Machine for Genetic Hillclimbing, 1987; A. Törn and A. Žilinskas, Global Optimization, 1989 (Rastrigin).

type Numbers = readonly number[];

const sum = (x: Numbers) => x.reduce((a, b) => a + b, 0);

/** −5 … 10 and 0 … 15; 0.397887 at (−π, 12.275), (π, 2.275), (9.42478, 2.475). */
export function branin([x, y]: Numbers): number {
  const bowl = y! - (5.1 / (4 * Math.PI ** 2)) * x! ** 2 + (5 / Math.PI) * x! - 6;
  return bowl ** 2 + 10 * (1 - 1 / (8 * Math.PI)) * Math.cos(x!) + 10;
}

/** −5.12 … 5.12; 0 at 0. */
export function rastrigin(x: Numbers): number {
  return sum(x.map((a) => a * a - 10 * Math.cos(2 * Math.PI * a) + 10));
}

/** −32.768 … 32.768; 0 at 0, where it has a point. */
export function ackley(x: Numbers): number {
  const n = x.length;
  const ripple = Math.exp(sum(x.map((a) => Math.cos(2 * Math.PI * a))) / n);
  return -20 * Math.exp(-0.2 * Math.sqrt(sum(x.map((a) => a * a)) / n)) - ripple + 20 + Math.E;
}

const HEIGHTS = [1, 1.2, 3, 3.2];
const WIDTHS = [
  [10, 3, 17, 3.5, 1.7, 8],
  [0.05, 10, 17, 0.1, 8, 14],
  [3, 3.5, 1.7, 10, 17, 8],
  [17, 8, 0.05, 10, 0.1, 14],
];
const PLACES = [
  [0.1312, 0.1696, 0.5569, 0.0124, 0.8283, 0.5886],
  [0.2329, 0.4135, 0.8307, 0.3736, 0.1004, 0.9991],
  [0.2348, 0.1451, 0.3522, 0.2883, 0.3047, 0.665],
  [0.4047, 0.8828, 0.8732, 0.5743, 0.1091, 0.0381],
];

/** 0 … 1, six; −3.32237 at (0.20169, 0.150011, 0.476874, 0.275332, 0.311652, 0.6573). */
export function hartmann6(x: Numbers): number {
  const pits = HEIGHTS.map((height, i) => {
    const far = sum(x.map((a, j) => WIDTHS[i]![j]! * (a - PLACES[i]![j]!) ** 2));
    return height * Math.exp(-far);
  });
  return -sum(pits);
}

/** A pit of depth 1, its deviation 3 % of 0 … 1, round `centre`, among ripples a third as high. */
export function pit(centre: Numbers): (x: Numbers) => number {
  return (x) => {
    const away = x.map((a, i) => a - centre[i]!);
    const ripple = sum(away.map((d) => 0.15 * (1 - Math.cos(6 * Math.PI * d)))) / x.length;
    return ripple - Math.exp(-sum(away.map((d) => (d / 0.03) ** 2)) / 2);
  };
}

/** The same pit along the first of the fields; along the others it is 40 % wide. */
export function slit(x: Numbers): number {
  const [first, ...others] = x.map((a, i) => a - (i === 0 ? 0.713 : 0.4));
  const far = (first! / 0.03) ** 2 + sum(others.map((d) => (d / 0.4) ** 2));
  return 0.15 * (1 - Math.cos(6 * Math.PI * first!)) - Math.exp(-far / 2);
}
