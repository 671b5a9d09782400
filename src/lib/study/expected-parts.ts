// Which parts of a stress a wire's place leads one to expect. A yoke lead whose dc alone is written
// down is not a wire of that dc: the pulse is missing, and the figure is a lower bound.
import type { FunctionRole } from './function-words.ts';
import type { Net, TerminalEntry } from './types.ts';

export interface ExpectedParts {
  /** Why the part is expected, in words; null where it is not. */
  readonly ac: string | null;
  readonly pulse: string | null;
  /** At and above this dc the expected ac is too small to count: the few volts of a filament that
   *  stands on a rail lie within the margin. */
  readonly acMattersBelowV: number;
  /** True where a dc part that nobody wrote down counts as none: the power line. */
  readonly noDc: boolean;
  /** Its ac is that of the line or of a winding, and there before any tube plays. */
  readonly isLineAc: boolean;
}

/** Nothing beyond what is written down. */
export const noExpectations: ExpectedParts = {
  ac: null,
  pulse: null,
  acMattersBelowV: Infinity,
  noDc: false,
  isLineAc: false
};

/** Roles at which a pulse of the sweep is filtered away or does not arrive. */
const quiet: readonly FunctionRole[] = ['supply', 'screen', 'cathode', 'heater', 'ground', 'grid'];

/** What to expect on a wire.
 *  @param own the roles of the wire's own function
 *  @param net the net it is on; what its other wires say counts too, but not on a rail or the chassis
 *  @param ends the terminals that it ends at */
export function expectedParts(
  own: ReadonlySet<FunctionRole>,
  net: Pick<Net, 'isChassis' | 'isSupply' | 'atHeater' | 'roles'> | undefined,
  ends: readonly TerminalEntry[]
): ExpectedParts {
  if (net?.isChassis === true) return noExpectations;
  const shared = net === undefined || net.isSupply ? undefined : net.roles;
  const has = (role: FunctionRole) => own.has(role) || shared?.has(role) === true;
  const noDc = has('line');
  const isLineAc = noDc || has('heater') || net?.atHeater === true;
  const plain: ExpectedParts = { ...noExpectations, noDc, isLineAc };
  const atYoke = ends.find(({ part }) => part.kind === 'yoke');
  if (net?.isSupply !== true && !quiet.some((role) => own.has(role))) {
    if (has('sweep')) return { ...plain, pulse: 'sweep circuit' };
    if (atYoke) return { ...plain, pulse: `ends at the yoke ${atYoke.part.reference}` };
  }
  if (own.has('supply')) return plain;
  if (has('heater') || (net?.atHeater === true && !net.isSupply)) {
    return { ...plain, ac: 'heater', acMattersBelowV: 60 };
  }
  if (noDc) return { ...plain, ac: 'power line' };
  // No signal plate stands at kilovolts of dc: that is a picture tube's anode.
  if (own.has('plate') && !own.has('second anode') && net?.isSupply !== true) {
    return { ...plain, ac: 'plate', acMattersBelowV: 3000 };
  }
  return plain;
}
