import {
  type Branch,
  type CoilCircuit,
  type Contact,
  isContact,
  type Network,
} from '../../starter/control/controlCircuit.ts';

/** A coil's circuit as it is drawn. */
export interface PlannedCoil {
  readonly circuit: CoilCircuit;
  /** In their order on paper. */
  readonly branches: readonly PlannedBranch[];
}

/** A way to energise a coil as it is drawn. */
export interface PlannedBranch {
  /** What follows the shared contacts; the whole branch where it shares none. */
  readonly network: Network;
  /** The shared contacts at its beginning; null: it begins at the feed. */
  readonly head: SharedHead | null;
}

/** One contact, or several in series, through which branches of neighbouring coils begin. */
export interface SharedHead {
  readonly contacts: readonly Contact[];
}

/**
 * Plans coils that stand side by side. The table states a contact in every branch it acts on; a stop button or a ready relay has
 * that contact once, so it is drawn once, and the branches part after it. Contacts are taken together only where no other path
 * has to cross the conductor that joins the branches, and where no current can come back through one branch into another.
 */
export function planCoils(coils: readonly CoilCircuit[]): readonly PlannedCoil[] {
  const planned: PlannedCoil[] = [];
  while (planned.length < coils.length) {
    const rest = coils.slice(planned.length);
    const shared = longestRun(rest);
    planned.push(...(shared.length > 1 ? joined(shared) : [alone(rest[0]!)]));
  }
  return planned;
}

/** A coil with the branch that shares its beginning. */
interface Member {
  readonly circuit: CoilCircuit;
  readonly branch: Branch;
}

function longestRun(coils: readonly CoilCircuit[]): readonly Member[] {
  const runs = coils[0]!.branches.map((branch) => {
    const first = leading(branch.network)[0];
    return first === undefined ? [] : runFrom(coils, first);
  });
  return runs.reduce((longest, run) => (run.length > longest.length ? run : longest), []);
}

function runFrom(coils: readonly CoilCircuit[], first: Contact): readonly Member[] {
  const run: Member[] = [];
  for (const circuit of coils) {
    const branch = circuit.branches.find(({ network }) => isSame(leading(network)[0], first));
    if (branch === undefined) break;
    const member = { circuit, branch };
    if (run.some((other) => mayFeedBack(other, member))) break;
    run.push(member);
    // Its other branches would stand between this one and the next coil's.
    if (run.length > 1 && circuit.branches.length > 1) break;
  }
  return run;
}

/** A coil with another way to be energised has voltage behind its shared branch, which must not reach the other coil's. */
function mayFeedBack(a: Member, b: Member): boolean {
  if (a.circuit.branches.length === 1 && b.circuit.branches.length === 1) return false;
  const count = sharedCount([a, b]);
  const first = needed(without(a.branch.network, count));
  const second = needed(without(b.branch.network, count));
  return !first.some((one) => second.some((other) => one.device === other.device && one.kind !== other.kind));
}

/** How many contacts the branches have alike at their beginning. */
function sharedCount(members: readonly Member[]): number {
  const beginnings = members.map(({ branch }) => leading(branch.network));
  let count = 0;
  while (beginnings.every((one) => isSame(one[count], beginnings[0]![count]))) count += 1;
  return count;
}

/** Contacts without which a network cannot conduct: those in series. */
function needed(network: Network): readonly Contact[] {
  if (isContact(network)) return [network];
  return 'series' in network ? network.series.filter(isContact) : [];
}

function joined(members: readonly Member[]): readonly PlannedCoil[] {
  const count = sharedCount(members);
  const contacts = leading(members[0]!.branch.network).slice(0, count);
  const head: SharedHead = { contacts };
  return members.map(({ circuit, branch }, index) => {
    const own = { network: without(branch.network, count), head };
    const others = circuit.branches
      .filter((one) => one !== branch)
      .map(({ network }): PlannedBranch => ({ network, head: null }));
    // Shared branches of neighbours stand next to each other.
    return { circuit, branches: index === 0 ? [...others, own] : [own, ...others] };
  });
}

/** A coil that shares contacts with no other. */
export function alone(circuit: CoilCircuit): PlannedCoil {
  return { circuit, branches: circuit.branches.map(({ network }) => ({ network, head: null })) };
}

/** Single contacts in series at the beginning of a network. */
function leading(network: Network): readonly Contact[] {
  if (isContact(network)) return [network];
  if ('parallel' in network) return [];
  const found: Contact[] = [];
  for (const part of network.series) {
    if (!isContact(part)) break;
    found.push(part);
  }
  return found;
}

function without(network: Network, count: number): Network {
  if (isContact(network)) return { series: [] };
  return 'series' in network ? { series: network.series.slice(count) } : network;
}

function isSame(a: Contact | undefined, b: Contact | undefined): boolean {
  return (
    a !== undefined &&
    b !== undefined &&
    a.device === b.device &&
    a.kind === b.kind &&
    a.terminals === b.terminals
  );
}
