import { type LoadSum, loadSum } from './loadTorque.ts';
import type { ScenarioShape } from './scenarioShape.ts';
import type { StateIndex } from './stateIndex.ts';

/** How one mass moves: the way whose friction it meets, 0 where nothing tells ways apart; held: at rest. */
export interface Motion {
  readonly way: -1 | 0 | 1;
  readonly held: boolean;
}

/** What is fixed about the shaft between two events. With a rigid shaft motor and load are one mass: `motor`. */
export interface ShaftMode {
  readonly motor: Motion;
  readonly load: Motion;
  /** Flanks of the coupling that touch: those that push forward, backward, or none. */
  readonly touching: -1 | 0 | 1;
}

/** The masses that can stop and start by themselves. */
export type MassName = 'motor' | 'load';

/**
 * Motor, coupling, gear and load, the load counted at its own shaft:
 *   rigid     J_m·a = T_e − T_fw − f·T_g/i,  T_g = T_load + J_L·a/i
 *   elastic   J_m·a = T_e − T_fw − T_c,  T_c = k·(twist ∓ play/2) + c·d(twist)/dt,  J_L·a_L = T_g − T_load,  T_g = i·T_c/f
 * f = 1/η while the mesh passes power to the load, η_back while to the motor; which one is found at every evaluation from the
 * sign of the mesh torque itself.
 */
export interface DriveTrain {
  readonly elastic: boolean;
  readonly ratio: number;
  readonly masses: readonly MassName[];
  /** Speed of a mass in the state. */
  speedAt(mass: MassName): number;
  /** Writes the rates of motion and of the mechanical integrals. */
  rates(dydt: Float64Array, y: Float64Array, torque: number, mode: ShaftMode): void;
  /** Torque in the coupling, N·m; 0 without one. */
  couplingTorque(y: Float64Array, mode: ShaftMode): number;
  couplingTorqueRate(y: Float64Array, f: Float64Array, mode: ShaftMode): number;
  /** Torque left to move a resting mass one way (positive: that way it goes), N·m. */
  drive(mass: MassName, way: 1 | -1, y: Float64Array, torque: number, mode: ShaftMode): number;
  driveRate(
    mass: MassName,
    way: 1 | -1,
    y: Float64Array,
    f: Float64Array,
    rate: number,
    mode: ShaftMode,
  ): number;
  /** True where something holds the mass at rest or tells the ways apart. */
  sticks(mass: MassName): boolean;
  /** Motion of a mass at rest. */
  settle(mass: MassName, y: Float64Array, torque: number, mode: ShaftMode): Motion;
  /** Torque at the motor that keeps a steady motor speed, N·m. */
  steadyTorque(omega: number, way: 1 | -1): number;
  /** Torque in the coupling at a steady speed, or at rest (speed 0): the least that keeps the load there. */
  steadyCoupling(omega: number, way: 1 | -1): number;
  /** Twist that gives a coupling torque at no relative motion, rad. */
  twistOf(torque: number): number;
  touchingAt(twist: number): -1 | 0 | 1;
  readonly halfPlay: number;
  /** Functions of state and air-gap torque at whose zeros a rate has a corner: steps had better end there. */
  corners(mode: ShaftMode): readonly ((y: Float64Array, torque: number) => number)[];
  kinetic(y: Float64Array): number;
  elasticEnergy(y: Float64Array, mode: ShaftMode): number;
}

/** Builds the shaft of a scenario. */
export function driveTrain(scenario: ScenarioShape, index: StateIndex): DriveTrain {
  const { machine } = scenario;
  const { gear, coupling } = scenario.load;
  const load: LoadSum = loadSum(scenario.load.torques);
  const Jm = machine.inertia;
  const JL = scenario.load.inertia;
  const bearing = machine.mechanicalLoss?.friction ?? 0;
  const windage = machine.mechanicalLoss?.windage ?? 0;
  const ratio = gear?.ratio ?? 1;
  const driving = 1 / (gear?.efficiency ?? 1);
  const driven = gear?.backwardEfficiency ?? 1;
  const lossy = driving !== 1 || driven !== 1;
  const elastic = coupling !== undefined;
  const stiffness = coupling?.stiffness ?? 0;
  const damping = coupling?.damping ?? 0;
  const halfPlay = (coupling?.backlash ?? 0) / 2;
  const opposes = load.hold > 0 || load.opposing(0) > 0 || load.opposing(1e3) > 0;
  const { omega: omegaAt, theta, loadSpeed, twist } = index;

  /** Motor-side over load-side torque, times the ratio, for a mesh torque and the way the load goes. */
  const factor = (meshTorque: number, way: number) => (meshTorque * way >= 0 ? driving : driven);
  const wayOf = (motion: Motion, speed: number) => (motion.way !== 0 ? motion.way : Math.sign(speed));
  const loadTorque = (speed: number, way: number) =>
    load.steady(speed) + (opposes ? way * load.opposing(Math.max(0, way * speed)) : 0);
  const motorLoss = (speed: number, way: number) => windage * speed * Math.abs(speed) + bearing * way;

  function couplingTorque(y: Float64Array, mode: ShaftMode): number {
    if (!elastic || mode.touching === 0) return 0;
    const elasticPart = stiffness * (y[twist]! - mode.touching * halfPlay);
    return elasticPart + damping * (y[omegaAt]! - ratio * y[loadSpeed]!);
  }

  function couplingTorqueRate(y: Float64Array, f: Float64Array, mode: ShaftMode): number {
    if (!elastic || mode.touching === 0) return 0;
    const turning = y[omegaAt]! - ratio * y[loadSpeed]!;
    return stiffness * turning + damping * (f[omegaAt]! - ratio * f[loadSpeed]!);
  }

  /** Torque on the load side of the mesh from that of the coupling. */
  const throughMesh = (torque: number, way: number) => (ratio * torque) / factor(torque, way);

  function rigidRates(dydt: Float64Array, y: Float64Array, torque: number, mode: ShaftMode): void {
    const speed = y[omegaAt]!;
    const way = wayOf(mode.motor, speed);
    const ownLoss = motorLoss(speed, way);
    const torqueOfLoad = loadTorque(speed / ratio, way);
    let acceleration = 0;
    let gearPower = 0;
    if (!mode.motor.held) {
      // Try the mesh as driving; if its torque then points the other way, it is driven.
      const solve = (f: number) =>
        (torque - ownLoss - (f * torqueOfLoad) / ratio) / (Jm + (f * JL) / ratio ** 2);
      acceleration = solve(driving);
      let mesh = torqueOfLoad + (JL * acceleration) / ratio;
      let f = driving;
      if (lossy && mesh * way < 0) {
        f = driven;
        acceleration = solve(f);
        mesh = torqueOfLoad + (JL * acceleration) / ratio;
      }
      gearPower = ((f - 1) * mesh * speed) / ratio;
    }
    dydt[omegaAt] = acceleration;
    dydt[theta] = speed;
    dydt[index.motorLoss] = ownLoss * speed;
    dydt[index.loadWork] = (torqueOfLoad * speed) / ratio;
    dydt[index.gearLoss] = gearPower;
    dydt[index.damperLoss] = 0;
  }

  function elasticRates(dydt: Float64Array, y: Float64Array, torque: number, mode: ShaftMode): void {
    const speed = y[omegaAt]!;
    const ofLoad = y[loadSpeed]!;
    const way = wayOf(mode.load, ofLoad);
    const ownLoss = motorLoss(speed, wayOf(mode.motor, speed));
    const torqueOfLoad = loadTorque(ofLoad, way);
    const shaftTorque = couplingTorque(y, mode);
    const mesh = throughMesh(shaftTorque, way);
    const turning = speed - ratio * ofLoad;
    dydt[omegaAt] = mode.motor.held ? 0 : (torque - ownLoss - shaftTorque) / Jm;
    dydt[theta] = speed;
    dydt[loadSpeed] = mode.load.held ? 0 : (mesh - torqueOfLoad) / JL;
    dydt[twist] = turning;
    dydt[index.motorLoss] = ownLoss * speed;
    dydt[index.loadWork] = torqueOfLoad * ofLoad;
    dydt[index.gearLoss] = (ratio * shaftTorque - mesh) * ofLoad;
    dydt[index.damperLoss] = mode.touching === 0 ? 0 : damping * turning * turning;
  }

  function drive(mass: MassName, way: 1 | -1, y: Float64Array, torque: number, mode: ShaftMode): number {
    const resisting = load.steady(0) + way * load.hold;
    if (!elastic) {
      return way * (torque - way * bearing - (factor(resisting, way) * resisting) / ratio);
    }
    const shaftTorque = couplingTorque(y, mode);
    return mass === 'motor'
      ? way * (torque - shaftTorque) - bearing
      : way * (throughMesh(shaftTorque, way) - resisting);
  }

  function driveRate(
    mass: MassName,
    way: 1 | -1,
    y: Float64Array,
    f: Float64Array,
    rate: number,
    mode: ShaftMode,
  ): number {
    if (!elastic) return way * rate;
    const shaftRate = couplingTorqueRate(y, f, mode);
    if (mass === 'motor') return way * (rate - shaftRate);
    return (way * ratio * shaftRate) / factor(couplingTorque(y, mode), way);
  }

  function sticks(mass: MassName): boolean {
    const ofLoad = opposes || lossy;
    if (!elastic) return ofLoad || bearing > 0;
    return mass === 'motor' ? bearing > 0 : ofLoad;
  }

  function settle(mass: MassName, y: Float64Array, torque: number, mode: ShaftMode): Motion {
    if (!sticks(mass)) return { way: 0, held: false };
    if (drive(mass, 1, y, torque, mode) > 0) return { way: 1, held: false };
    if (drive(mass, -1, y, torque, mode) > 0) return { way: -1, held: false };
    return { way: 0, held: true };
  }

  function steadyCoupling(omega: number, way: 1 | -1): number {
    const seen = (torque: number) => (factor(torque, way) * torque) / ratio;
    if (omega !== 0) return seen(loadTorque(omega / ratio, way));
    const forwards = load.steady(0) + load.hold;
    const backwards = load.steady(0) - load.hold;
    // A load that would run away one way is carried on the flanks that hold it back, with the gear's loss helping.
    if (backwards > 0) return (driven * backwards) / ratio;
    return forwards < 0 ? (driven * forwards) / ratio : 0;
  }

  function corners(mode: ShaftMode): ((y: Float64Array, torque: number) => number)[] {
    const moving = elastic ? mode.load : mode.motor;
    if (moving.held) return [];
    const speedOf = (y: Float64Array) => (elastic ? y[loadSpeed]! : y[omegaAt]! / ratio);
    const out: ((y: Float64Array, torque: number) => number)[] = load.corners.map(
      (speed) => (y) => speedOf(y) - speed,
    );
    if (lossy && elastic && mode.touching !== 0) out.push((y) => couplingTorque(y, mode));
    if (lossy && !elastic) {
      // The sign of the mesh torque, whichever way the power goes: J_m·T_load + J_L·(T_e − T_fw)/i.
      out.push((y, torque) => {
        const speed = y[omegaAt]!;
        const way = wayOf(moving, speed);
        const free = torque - motorLoss(speed, way);
        return Jm * loadTorque(speed / ratio, way) + (JL * free) / ratio;
      });
    }
    return out;
  }

  return {
    elastic,
    corners,
    ratio,
    masses: elastic ? ['motor', 'load'] : ['motor'],
    speedAt: (mass) => (mass === 'motor' ? omegaAt : loadSpeed),
    rates: elastic ? elasticRates : rigidRates,
    couplingTorque,
    couplingTorqueRate,
    drive,
    driveRate,
    sticks,
    settle,
    steadyTorque: (omega, way) => steadyCoupling(omega, way) + motorLoss(omega, way),
    steadyCoupling,
    twistOf: (torque) => torque / stiffness + Math.sign(torque) * halfPlay,
    touchingAt: (value) => (halfPlay === 0 ? 1 : value > halfPlay ? 1 : value < -halfPlay ? -1 : 0),
    halfPlay,
    kinetic: (y) => {
      const ofLoad = elastic ? y[loadSpeed]! : y[omegaAt]! / ratio;
      return 0.5 * Jm * y[omegaAt]! ** 2 + 0.5 * JL * ofLoad ** 2;
    },
    elasticEnergy: (y, mode) =>
      elastic && mode.touching !== 0 ? 0.5 * stiffness * (y[twist]! - mode.touching * halfPlay) ** 2 : 0,
  };
}
