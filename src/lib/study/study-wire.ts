// Everything that the study says of one wire, from the wire and its slice of the rest.
import type { Policy } from '#document/index.ts';
import { isSameAmount, wireName } from './amounts.ts';
import type { Mate, Standing } from './bundle-mates.ts';
import { expectedParts, type ExpectedParts } from './expected-parts.ts';
import type { FunctionRole } from './function-words.ts';
import { isInsulationOnly } from './insulation-only.ts';
import { leastLineV } from './line-side.ts';
import { recommendConductor } from './recommended-conductor.ts';
import { keepFields, keepSet, sameFields } from './same.ts';
import type { Amount, Net, WireCurrent, WireStudy } from './types.ts';
import { mayBePulsed, type RailClass, type RailClassFor } from './unit-rails.ts';
import type { WireAlone } from './wire-alone.ts';
import { carriesOf, type Carried } from './wire-carries.ts';
import { floorOf, needOf } from './wire-need.ts';
import { stressOf, worseState } from './wire-stress.ts';

/** A net as its wires see it: without its members. */
export type NetStanding = Omit<Net, 'terminals' | 'wires'>;

/** A wire with all that stands on it and flows in it, and where it stands among its neighbours. */
export interface LoadedWire extends Carried {
  readonly alone: WireAlone;
  readonly nets: readonly NetStanding[];
  readonly current: WireCurrent | null;
  readonly seriesAmps: Amount | null;
  /** 1 or -1: the phase of its ac, where the network tells it. */
  readonly phase: number | null;
  readonly expected: ExpectedParts;
  readonly standing: Standing;
}

type LoadInputs = Pick<LoadedWire, 'alone' | 'nets' | 'current' | 'seriesAmps' | 'phase'>;

/** @param before given again where its inputs are the same */
export function loadWire(inputs: LoadInputs, before: LoadedWire | undefined): LoadedWire {
  const { alone, nets, current, seriesAmps, phase } = inputs;
  if (
    before?.alone === alone &&
    before.current === current &&
    before.phase === phase &&
    isSameAmount(before.seriesAmps, seriesAmps) &&
    before.nets.length === nets.length &&
    nets.every((net, n) => standsAlike(before.nets[n], net))
  ) {
    return before;
  }
  const { wire } = alone.slot;
  const carried = carriesOf(wire, nets, current, seriesAmps);
  const net = nets[0];
  const ends = [alone.slot.from, alone.slot.to].filter((end) => end !== undefined);
  const expected = expectedParts(alone.roles, net, ends);
  const state = worseState({ ...carried.carries, ...carried }, expected.isLineAc);
  const acV = state.ac?.value ?? 0;
  const standing = keepFields(before?.standing, {
    dcV: state.dc?.value ?? 0,
    acV,
    phasedV: phase === null ? null : phase * acV,
    stressV: state.volts,
    net: net?.id ?? null,
    isFromLine: nets.some(
      ({ onLineSide, atHeater }) => onLineSide || (atHeater && acV >= leastLineV)
    ),
    name: wireName(wire)
  });
  const { coldDcV, solvedDcV } = carried;
  const says = (role: FunctionRole) =>
    alone.roles.has(role) || nets.some(({ roles }) => roles.has(role));
  // Of its own accord nothing is said of amperes there; what somebody wrote down stays.
  const isBesideThePoint = wire.carries.amps === undefined && isInsulationOnly(state.volts, says);
  const carries = isBesideThePoint ? { ...carried.carries, amps: null } : carried.carries;
  return {
    alone,
    nets,
    current,
    seriesAmps,
    phase,
    carries,
    coldDcV,
    solvedDcV,
    expected,
    standing
  };
}

/** All that a wire has of its net is the same, whatever else came or went on it. */
export const standsAlike = (was: NetStanding | undefined, net: NetStanding): boolean =>
  net === was ||
  (was?.id === net.id &&
    was.name === net.name &&
    was.isChassis === net.isChassis &&
    was.isSupply === net.isSupply &&
    was.standsOnRail === net.standsOnRail &&
    was.onLineSide === net.onLineSide &&
    was.atHeater === net.atHeater &&
    isSameAmount(was.dcV, net.dcV) &&
    isSameAmount(was.acV, net.acV) &&
    isSameAmount(was.pulseV, net.pulseV) &&
    isSameAmount(was.coldDcV, net.coldDcV) &&
    isSameAmount(was.solvedDcV, net.solvedDcV) &&
    (was.roles === net.roles || keepSet(was.roles, net.roles) === was.roles));

/** What a wire's study was made from; compared with what it would be made from now. */
export interface StudiedWire {
  readonly loaded: LoadedWire;
  readonly mate: Mate | null;
  readonly policy: Policy;
  readonly rail: RailClass;
  readonly study: WireStudy;
}

/** The larger of what is declared and what the network gives, A; 0 where neither is known. */
const ampsOf = ({ carries, current }: LoadedWire): number =>
  Math.max(Math.abs(carries.amps?.value ?? 0), current?.amps ?? 0);

/** @param railOf the class of the highest rail or pulse in some units
 *  @param inCable the highest class in the wire's cable
 *  @param before given again where nothing that it looks at has changed */
export function studyWire(
  loaded: LoadedWire,
  mate: Mate | null,
  policy: Policy,
  railOf: RailClassFor,
  inCable: RailClass | undefined,
  before: StudiedWire | undefined
): StudiedWire {
  const { alone, nets, current } = loaded;
  const says = (role: FunctionRole) =>
    alone.roles.has(role) || nets.some(({ roles }) => roles.has(role));
  // Volts that somebody declared are no pulse's, unless its place leads one to expect a pulse on top.
  const { dcV, acV, pulseV } = alone.slot.wire.carries;
  const isDeclared = dcV !== undefined || acV !== undefined;
  const isPulsed =
    pulseV !== undefined || loaded.expected.pulse !== null || (!isDeclared && mayBePulsed(says));
  const inUnits = railOf(alone.gauge?.units ?? [], isPulsed);
  const rail = inCable && inCable.classV > inUnits.classV ? inCable : inUnits;
  if (
    // What it carries is the same object where nothing came otherwise but the nets' members.
    before?.loaded.carries === loaded.carries &&
    before.policy === policy &&
    (before.mate === mate || (before.mate && mate && sameFields(before.mate, mate))) &&
    before.rail.classV === rail.classV &&
    before.rail.words === rail.words
  ) {
    return before.loaded === loaded ? before : { ...before, loaded };
  }
  const { roles, slot, gauge } = alone;
  const { carries, coldDcV, solvedDcV, expected } = loaded;
  const floor = floorOf(nets, policy);
  const isStressed = before?.policy === policy && isStressedAlike(before, loaded, mate);
  const stress = isStressed
    ? before.study.stress
    : stressOf({ ...carries, coldDcV, solvedDcV }, expected, mate);
  const isNeeded = isStressed && sameFields(floorOf(before.loaded.nets, policy), floor);
  const need = isNeeded ? before.study.need : needOf(stress, floor, policy);
  const study: WireStudy = {
    id: slot.wire.id,
    net: nets[0]?.id ?? null,
    carries,
    stress,
    need,
    isBare: alone.isBare,
    current,
    conductor: alone.conductor,
    foundRating: alone.foundRating,
    plannedRating: alone.plannedRating,
    length: alone.length,
    cut: alone.cut,
    awg: alone.awg,
    recommended: recommendConductor(gauge, need, ampsOf(loaded), policy, rail),
    roles
  };
  const kept = before && sayAlike(before.study, study) ? before.study : study;
  return { loaded, mate, policy, rail, study: kept };
}

/** All that a wire's stress is reckoned from is the same. */
const isStressedAlike = (
  { loaded: was, mate: mateWas }: StudiedWire,
  now: LoadedWire,
  mate: Mate | null
): boolean =>
  (mateWas === mate || (mateWas !== null && mate !== null && sameFields(mateWas, mate))) &&
  isSameAmount(was.carries.dcV, now.carries.dcV) &&
  isSameAmount(was.carries.acV, now.carries.acV) &&
  isSameAmount(was.carries.pulseV, now.carries.pulseV) &&
  isSameAmount(was.coldDcV, now.coldDcV) &&
  isSameAmount(was.solvedDcV, now.solvedDcV) &&
  sameFields(was.expected, now.expected);

/** The same but for the class of a rail that it does not come to. */
const sayAlike = (was: WireStudy, now: WireStudy): boolean =>
  was.recommended !== null &&
  now.recommended !== null &&
  sameFields(was.recommended, now.recommended) &&
  sameFields({ ...was, recommended: null }, { ...now, recommended: null });
