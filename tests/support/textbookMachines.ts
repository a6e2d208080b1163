import type { MachineData, Supply } from '../../src/scenario/scenario.ts';

/** 1 hp as the textbooks use it, W. */
export const HORSEPOWER = 745.7;

/** A machine as a textbook prints it: reactances in Ω at rated frequency, referred to the stator. */
export interface PrintedMachine {
  readonly lineVoltage: number;
  readonly frequency: number;
  readonly poles: number;
  readonly rs: number;
  readonly Xls: number;
  readonly XM: number;
  /** One or two cages. */
  readonly cages: readonly { readonly rr: number; readonly Xlr: number }[];
  /** kg·m² */
  readonly J: number;
  /** Rated shaft power, W, or null. */
  readonly power: number | null;
  /** Rated speed, r/min, or null. */
  readonly rpm: number | null;
}

/** Supply and machine in SI, as a scenario has them. */
export interface TextbookMachine {
  readonly supply: Supply;
  readonly machine: MachineData;
  /** Synchronous speed, rad/s, mechanical. */
  readonly synchronousSpeed: number;
  readonly printed: PrintedMachine;
}

/** Turns printed reactances into the inductances of a scenario. */
export function textbookMachine(printed: PrintedMachine): TextbookMachine {
  const omega = 2 * Math.PI * printed.frequency;
  const polePairs = printed.poles / 2;
  return {
    printed,
    synchronousSpeed: omega / polePairs,
    supply: {
      lineVoltage: printed.lineVoltage,
      frequency: printed.frequency,
      angle: 0,
      sourceResistance: 0,
      sourceInductance: 0,
    },
    machine: {
      connection: 'star',
      polePairs,
      Rs: printed.rs,
      Lls: printed.Xls / omega,
      Lm: printed.XM / omega,
      cages: printed.cages.map(({ rr, Xlr }) => ({ Rr: rr, Llr: Xlr / omega })),
      inertia: printed.J,
      rated: {
        current: null,
        torque: null,
        power: printed.power,
        speed: printed.rpm === null ? null : (printed.rpm * 2 * Math.PI) / 60,
      },
    },
  };
}

function krause(
  hp: number,
  lineVoltage: number,
  rpm: number,
  rs: number,
  Xls: number,
  XM: number,
  rr: number,
  J: number,
): TextbookMachine {
  const cages = [{ rr, Xlr: Xls }];
  return textbookMachine({
    lineVoltage,
    frequency: 60,
    poles: 4,
    rs,
    Xls,
    XM,
    cages,
    J,
    power: hp * HORSEPOWER,
    rpm,
  });
}

/**
 * The four machines of P. C. Krause, O. Wasynczuk, S. D. Sudhoff, Analysis of Electric Machinery and Drive Systems,
 * 2nd ed., IEEE Press/Wiley 2002, table "Induction machine parameters" (table number from memory: 4.10-1). Values from
 * memory; base torques and base currents of the table and the 3 hp eigenvalues follow from them. The stator and rotor
 * leakage reactances are equal in the table.
 */
export const KRAUSE = {
  hp3: krause(3, 220, 1710, 0.435, 0.754, 26.13, 0.816, 0.089),
  hp50: krause(50, 460, 1705, 0.087, 0.302, 13.08, 0.228, 1.662),
  hp500: krause(500, 2300, 1773, 0.262, 1.206, 54.02, 0.187, 11.06),
  hp2250: krause(2250, 2300, 1786, 0.029, 0.226, 13.04, 0.022, 63.87),
} as const;

/** An invented double-cage machine: 400 V, 50 Hz, six poles; outer cage resistive, inner cage inductive. */
export const DOUBLE_CAGE: TextbookMachine = textbookMachine({
  lineVoltage: 400,
  frequency: 50,
  poles: 6,
  rs: 0.16,
  Xls: 0.45,
  XM: 13.5,
  cages: [
    { rr: 0.72, Xlr: 0.22 },
    { rr: 0.19, Xlr: 0.85 },
  ],
  J: 0.42,
  power: 22e3,
  rpm: null,
});
