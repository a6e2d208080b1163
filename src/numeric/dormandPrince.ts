/** Writes the derivatives at t of a state into `dydt`. */
export type Derivatives = (t: number, y: Float64Array, dydt: Float64Array) => void;

/**
 * One initial value problem, advanced step by step by the explicit Runge–Kutta method of order 8(5,3) of Dormand and Prince. All buffers are
 * made once; a step allocates nothing but what the caller keeps of it.
 *
 * Source: Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, 2nd edition, II.10. Every stage is written out, since a loop over a
 * table of coefficients takes twice the time.
 */
export interface DormandPrince {
  /** State at the beginning of the step to come, or after `accept` at its end. */
  readonly y: Float64Array;
  /** Slope there. */
  readonly slope: Float64Array;
  /** State that the last attempt arrived at. */
  readonly end: Float64Array;
  /**
   * Tries a step from (t, y) of length h.
   *
   * @returns the estimated error in units of the tolerance: up to 1 the step is good; NaN where a derivative is no number
   */
  readonly attempt: (t: number, h: number) => number;
  /** Slope at the end of the step tried, which the next step begins with. */
  readonly finish: (t: number, h: number) => void;
  /** Coefficients of the step's interpolant, `INTERPOLANT_TERMS` for each component, term by term, written from index `first`; after
   * `finish`, before `advance`. */
  readonly interpolant: (t: number, h: number, out: Float64Array, first: number) => void;
  /** The end of the step becomes the beginning of the next. */
  readonly advance: () => void;
}

/** State, end, stage, tolerance and sixteen slopes. */
const BUFFERS = 20;

/** Coefficients that an interpolant has for each component. */
export const INTERPOLANT_TERMS = 8;

/** Weight of the estimator of order 3, which keeps the one of order 5 from vanishing by chance. Source: as the method. */
const THIRD_WEIGHT = 0.01;

/**
 * Prepares a problem.
 *
 * @param f derivatives; called with arrays that it must not keep
 * @param y0 state to begin with
 * @param relative tolerance relative to the state
 * @param absolute tolerance of each component in its unit
 */
export function dormandPrince(
  f: Derivatives,
  y0: ArrayLike<number>,
  t0: number,
  relative: number,
  absolute: ArrayLike<number>,
): DormandPrince {
  const n = y0.length;
  const memory = new Float64Array(BUFFERS * n);
  let given = 0;
  const buffer = () => memory.subarray(given++ * n, given * n);
  const y = buffer();
  y.set(y0);
  const end = buffer();
  const at = buffer();
  const tolerance = buffer();
  tolerance.set(absolute);
  const k1 = buffer();
  const k2 = buffer();
  const k3 = buffer();
  const k4 = buffer();
  const k5 = buffer();
  const k6 = buffer();
  const k7 = buffer();
  const k8 = buffer();
  const k9 = buffer();
  const k10 = buffer();
  const k11 = buffer();
  const k12 = buffer();
  const k13 = buffer();
  const k14 = buffer();
  const k15 = buffer();
  const k16 = buffer();
  f(t0, y, k1);

  function attempt(t: number, h: number): number {
    for (let i = 0; i < n; i++) at[i] = y[i]! + h * (A2_1 * k1[i]!);
    f(t + C2 * h, at, k2);
    for (let i = 0; i < n; i++) at[i] = y[i]! + h * (A3_1 * k1[i]! + A3_2 * k2[i]!);
    f(t + C3 * h, at, k3);
    for (let i = 0; i < n; i++) at[i] = y[i]! + h * (A4_1 * k1[i]! + A4_3 * k3[i]!);
    f(t + C4 * h, at, k4);
    for (let i = 0; i < n; i++) at[i] = y[i]! + h * (A5_1 * k1[i]! + A5_3 * k3[i]! + A5_4 * k4[i]!);
    f(t + C5 * h, at, k5);
    for (let i = 0; i < n; i++) at[i] = y[i]! + h * (A6_1 * k1[i]! + A6_4 * k4[i]! + A6_5 * k5[i]!);
    f(t + C6 * h, at, k6);
    for (let i = 0; i < n; i++)
      at[i] = y[i]! + h * (A7_1 * k1[i]! + A7_4 * k4[i]! + A7_5 * k5[i]! + A7_6 * k6[i]!);
    f(t + C7 * h, at, k7);
    for (let i = 0; i < n; i++)
      at[i] = y[i]! + h * (A8_1 * k1[i]! + A8_4 * k4[i]! + A8_5 * k5[i]! + A8_6 * k6[i]! + A8_7 * k7[i]!);
    f(t + C8 * h, at, k8);
    for (let i = 0; i < n; i++)
      at[i] =
        y[i]! +
        h * (A9_1 * k1[i]! + A9_4 * k4[i]! + A9_5 * k5[i]! + A9_6 * k6[i]! + A9_7 * k7[i]! + A9_8 * k8[i]!);
    f(t + C9 * h, at, k9);
    for (let i = 0; i < n; i++)
      at[i] =
        y[i]! +
        h *
          (A10_1 * k1[i]! +
            A10_4 * k4[i]! +
            A10_5 * k5[i]! +
            A10_6 * k6[i]! +
            A10_7 * k7[i]! +
            A10_8 * k8[i]! +
            A10_9 * k9[i]!);
    f(t + C10 * h, at, k10);
    for (let i = 0; i < n; i++)
      at[i] =
        y[i]! +
        h *
          (A11_1 * k1[i]! +
            A11_4 * k4[i]! +
            A11_5 * k5[i]! +
            A11_6 * k6[i]! +
            A11_7 * k7[i]! +
            A11_8 * k8[i]! +
            A11_9 * k9[i]! +
            A11_10 * k10[i]!);
    f(t + C11 * h, at, k11);
    for (let i = 0; i < n; i++)
      at[i] =
        y[i]! +
        h *
          (A12_1 * k1[i]! +
            A12_4 * k4[i]! +
            A12_5 * k5[i]! +
            A12_6 * k6[i]! +
            A12_7 * k7[i]! +
            A12_8 * k8[i]! +
            A12_9 * k9[i]! +
            A12_10 * k10[i]! +
            A12_11 * k11[i]!);
    f(t + h, at, k12);
    let fifth = 0;
    let third = 0;
    for (let i = 0; i < n; i++) {
      const slope =
        B1 * k1[i]! +
        B6 * k6[i]! +
        B7 * k7[i]! +
        B8 * k8[i]! +
        B9 * k9[i]! +
        B10 * k10[i]! +
        B11 * k11[i]! +
        B12 * k12[i]!;
      const from = y[i]!;
      const to = from + h * slope;
      end[i] = to;
      const scale = tolerance[i]! + relative * Math.max(Math.abs(from), Math.abs(to));
      const e5 =
        (FIFTH1 * k1[i]! +
          FIFTH6 * k6[i]! +
          FIFTH7 * k7[i]! +
          FIFTH8 * k8[i]! +
          FIFTH9 * k9[i]! +
          FIFTH10 * k10[i]! +
          FIFTH11 * k11[i]! +
          FIFTH12 * k12[i]!) /
        scale;
      const e3 = (slope - THIRD1 * k1[i]! - THIRD9 * k9[i]! - THIRD12 * k12[i]!) / scale;
      fifth += e5 * e5;
      third += e3 * e3;
    }
    const both = fifth + THIRD_WEIGHT * third;
    return both === 0 ? 0 : (Math.abs(h) * fifth) / Math.sqrt(both * n);
  }

  function finish(t: number, h: number): void {
    f(t + h, end, k13);
  }

  function interpolant(t: number, h: number, out: Float64Array, first: number): void {
    for (let i = 0; i < n; i++)
      at[i] =
        y[i]! +
        h *
          (A14_1 * k1[i]! +
            A14_7 * k7[i]! +
            A14_8 * k8[i]! +
            A14_9 * k9[i]! +
            A14_10 * k10[i]! +
            A14_11 * k11[i]! +
            A14_12 * k12[i]! +
            A14_13 * k13[i]!);
    f(t + C14 * h, at, k14);
    for (let i = 0; i < n; i++)
      at[i] =
        y[i]! +
        h *
          (A15_1 * k1[i]! +
            A15_6 * k6[i]! +
            A15_7 * k7[i]! +
            A15_8 * k8[i]! +
            A15_11 * k11[i]! +
            A15_12 * k12[i]! +
            A15_13 * k13[i]! +
            A15_14 * k14[i]!);
    f(t + C15 * h, at, k15);
    for (let i = 0; i < n; i++)
      at[i] =
        y[i]! +
        h *
          (A16_1 * k1[i]! +
            A16_6 * k6[i]! +
            A16_7 * k7[i]! +
            A16_8 * k8[i]! +
            A16_9 * k9[i]! +
            A16_13 * k13[i]! +
            A16_14 * k14[i]! +
            A16_15 * k15[i]!);
    f(t + C16 * h, at, k16);
    for (let i = 0; i < n; i++) {
      const rise = end[i]! - y[i]!;
      const bend = h * k1[i]! - rise;
      const to = first + i;
      out[to] = y[i]!;
      out[to + n] = rise;
      out[to + 2 * n] = bend;
      out[to + 3 * n] = rise - h * k13[i]! - bend;
      out[to + 4 * n] =
        h *
        (D4_1 * k1[i]! +
          D4_6 * k6[i]! +
          D4_7 * k7[i]! +
          D4_8 * k8[i]! +
          D4_9 * k9[i]! +
          D4_10 * k10[i]! +
          D4_11 * k11[i]! +
          D4_12 * k12[i]! +
          D4_13 * k13[i]! +
          D4_14 * k14[i]! +
          D4_15 * k15[i]! +
          D4_16 * k16[i]!);
      out[to + 5 * n] =
        h *
        (D5_1 * k1[i]! +
          D5_6 * k6[i]! +
          D5_7 * k7[i]! +
          D5_8 * k8[i]! +
          D5_9 * k9[i]! +
          D5_10 * k10[i]! +
          D5_11 * k11[i]! +
          D5_12 * k12[i]! +
          D5_13 * k13[i]! +
          D5_14 * k14[i]! +
          D5_15 * k15[i]! +
          D5_16 * k16[i]!);
      out[to + 6 * n] =
        h *
        (D6_1 * k1[i]! +
          D6_6 * k6[i]! +
          D6_7 * k7[i]! +
          D6_8 * k8[i]! +
          D6_9 * k9[i]! +
          D6_10 * k10[i]! +
          D6_11 * k11[i]! +
          D6_12 * k12[i]! +
          D6_13 * k13[i]! +
          D6_14 * k14[i]! +
          D6_15 * k15[i]! +
          D6_16 * k16[i]!);
      out[to + 7 * n] =
        h *
        (D7_1 * k1[i]! +
          D7_6 * k6[i]! +
          D7_7 * k7[i]! +
          D7_8 * k8[i]! +
          D7_9 * k9[i]! +
          D7_10 * k10[i]! +
          D7_11 * k11[i]! +
          D7_12 * k12[i]! +
          D7_13 * k13[i]! +
          D7_14 * k14[i]! +
          D7_15 * k15[i]! +
          D7_16 * k16[i]!);
    }
  }

  function advance(): void {
    y.set(end);
    k1.set(k13);
  }

  return { y, slope: k1, end, attempt, finish, interpolant, advance };
}

/**
 * Coefficients of the explicit Runge–Kutta method of order 8 with error estimators of orders 5 and 3 and a continuous extension of
 * order 7: `A…` of the stages, `C…` of their instants, `B…` of the step, `FIFTH…` and `THIRD…` of the estimators, `D…` of the extension. Stage 13 is
 * the slope at the end of the step.
 *
 * Source: Dormand and Prince's method as given by Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, 2nd edition, II.10
 * (program DOP853), rounded to doubles. tests/unit/numeric checks the conditions of order.
 *
 * They stand below the code that reads them: constants of a module are there when a function runs.
 */
const C2 = 0.05260015195876773;
const C3 = 0.0789002279381516;
const C4 = 0.1183503419072274;
const C5 = 0.2816496580927726;
const C6 = 0.3333333333333333;
const C7 = 0.25;
const C8 = 0.3076923076923077;
const C9 = 0.6512820512820513;
const C10 = 0.6;
const C11 = 0.8571428571428571;
const C14 = 0.1;
const C15 = 0.2;
const C16 = 0.7777777777777778;
const A2_1 = 0.05260015195876773;
const A3_1 = 0.0197250569845379;
const A3_2 = 0.0591751709536137;
const A4_1 = 0.02958758547680685;
const A4_3 = 0.08876275643042054;
const A5_1 = 0.2413651341592667;
const A5_3 = -0.8845494793282861;
const A5_4 = 0.924834003261792;
const A6_1 = 0.037037037037037035;
const A6_4 = 0.17082860872947386;
const A6_5 = 0.12546768756682242;
const A7_1 = 0.037109375;
const A7_4 = 0.17025221101954405;
const A7_5 = 0.06021653898045596;
const A7_6 = -0.017578125;
const A8_1 = 0.03709200011850479;
const A8_4 = 0.17038392571223998;
const A8_5 = 0.10726203044637328;
const A8_6 = -0.015319437748624402;
const A8_7 = 0.008273789163814023;
const A9_1 = 0.6241109587160757;
const A9_4 = -3.3608926294469414;
const A9_5 = -0.868219346841726;
const A9_6 = 27.59209969944671;
const A9_7 = 20.154067550477894;
const A9_8 = -43.48988418106996;
const A10_1 = 0.47766253643826434;
const A10_4 = -2.4881146199716677;
const A10_5 = -0.590290826836843;
const A10_6 = 21.230051448181193;
const A10_7 = 15.279233632882423;
const A10_8 = -33.28821096898486;
const A10_9 = -0.020331201708508627;
const A11_1 = -0.9371424300859873;
const A11_4 = 5.186372428844064;
const A11_5 = 1.0914373489967295;
const A11_6 = -8.149787010746927;
const A11_7 = -18.52006565999696;
const A11_8 = 22.739487099350505;
const A11_9 = 2.4936055526796523;
const A11_10 = -3.0467644718982196;
const A12_1 = 2.273310147516538;
const A12_4 = -10.53449546673725;
const A12_5 = -2.0008720582248625;
const A12_6 = -17.9589318631188;
const A12_7 = 27.94888452941996;
const A12_8 = -2.8589982771350235;
const A12_9 = -8.87285693353063;
const A12_10 = 12.360567175794303;
const A12_11 = 0.6433927460157636;
const B1 = 0.054293734116568765;
const B6 = 4.450312892752409;
const B7 = 1.8915178993145003;
const B8 = -5.801203960010585;
const B9 = 0.3111643669578199;
const B10 = -0.1521609496625161;
const B11 = 0.20136540080403034;
const B12 = 0.04471061572777259;
const A14_1 = 0.056167502283047954;
const A14_7 = 0.25350021021662483;
const A14_8 = -0.2462390374708025;
const A14_9 = -0.12419142326381637;
const A14_10 = 0.15329179827876568;
const A14_11 = 0.00820105229563469;
const A14_12 = 0.007567897660545699;
const A14_13 = -0.008298;
const A15_1 = 0.03183464816350214;
const A15_6 = 0.028300909672366776;
const A15_7 = 0.053541988307438566;
const A15_8 = -0.05492374857139099;
const A15_11 = -0.00010834732869724932;
const A15_12 = 0.0003825710908356584;
const A15_13 = -0.00034046500868740456;
const A15_14 = 0.1413124436746325;
const A16_1 = -0.42889630158379194;
const A16_6 = -4.697621415361164;
const A16_7 = 7.683421196062599;
const A16_8 = 4.06898981839711;
const A16_9 = 0.3567271874552811;
const A16_13 = -0.0013990241651590145;
const A16_14 = 2.9475147891527724;
const A16_15 = -9.15095847217987;
const FIFTH1 = 0.01312004499419488;
const FIFTH6 = -1.2251564463762044;
const FIFTH7 = -0.4957589496572502;
const FIFTH8 = 1.6643771824549864;
const FIFTH9 = -0.35032884874997366;
const FIFTH10 = 0.3341791187130175;
const FIFTH11 = 0.08192320648511571;
const FIFTH12 = -0.022355307863886294;
const THIRD1 = 0.2440944881889764;
const THIRD9 = 0.7338466882816118;
const THIRD12 = 0.022058823529411766;
const D4_1 = -8.428938276109013;
const D4_6 = 0.5667149535193777;
const D4_7 = -3.0689499459498917;
const D4_8 = 2.38466765651207;
const D4_9 = 2.117034582445028;
const D4_10 = -0.871391583777973;
const D4_11 = 2.2404374302607883;
const D4_12 = 0.6315787787694688;
const D4_13 = -0.08899033645133331;
const D4_14 = 18.148505520854727;
const D4_15 = -9.194632392478356;
const D4_16 = -4.436036387594894;
const D5_1 = 10.427508642579134;
const D5_6 = 242.28349177525817;
const D5_7 = 165.20045171727028;
const D5_8 = -374.5467547226902;
const D5_9 = -22.113666853125306;
const D5_10 = 7.733432668472264;
const D5_11 = -30.674084731089398;
const D5_12 = -9.332130526430229;
const D5_13 = 15.697238121770845;
const D5_14 = -31.139403219565178;
const D5_15 = -9.35292435884448;
const D5_16 = 35.81684148639408;
const D6_1 = 19.985053242002433;
const D6_6 = -387.0373087493518;
const D6_7 = -189.17813819516758;
const D6_8 = 527.8081592054236;
const D6_9 = -11.57390253995963;
const D6_10 = 6.8812326946963;
const D6_11 = -1.0006050966910838;
const D6_12 = 0.7777137798053443;
const D6_13 = -2.778205752353508;
const D6_14 = -60.19669523126412;
const D6_15 = 84.32040550667716;
const D6_16 = 11.99229113618279;
const D7_1 = -25.69393346270375;
const D7_6 = -154.18974869023643;
const D7_7 = -231.5293791760455;
const D7_8 = 357.6391179106141;
const D7_9 = 93.40532418362432;
const D7_10 = -37.45832313645163;
const D7_11 = 104.0996495089623;
const D7_12 = 29.8402934266605;
const D7_13 = -43.53345659001114;
const D7_14 = 96.32455395918828;
const D7_15 = -39.17726167561544;
const D7_16 = -149.72683625798564;
