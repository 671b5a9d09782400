// What one wire carries: the larger of what it declares itself and what stands on its net; its current as
// declared, as the network has it, or as the wire that it is in series with.
import type { Wire } from '#document/index.ts';
import { largerAmount } from './amounts.ts';
import type { Amount, Net, WireCurrent, WireStudy } from './types.ts';

const declaredHere = (value: number | undefined): Amount | null =>
  value === undefined ? null : { value, how: 'declared', basis: 'declared on this wire' };

type VoltKind = 'dcV' | 'acV' | 'pulseV' | 'coldDcV' | 'solvedDcV';

export interface Carried {
  readonly carries: WireStudy['carries'];
  /** What its nets rise to cold. */
  readonly coldDcV: Amount | null;
  /** What the whole network gives, whatever was declared. */
  readonly solvedDcV: Amount | null;
}

/** @param nets none, one, or two for a wire that does not join them
 *  @param current of the whole network
 *  @param seriesAmps from a series run, where the wire declares none */
export function carriesOf(
  wire: Wire,
  nets: readonly Pick<Net, VoltKind>[],
  current: WireCurrent | null,
  seriesAmps: Amount | null
): Carried {
  const onNets = (kind: VoltKind) =>
    nets.reduce<Amount | null>((worst, net) => largerAmount(worst, net[kind]), null);
  const { carries } = wire;
  return {
    carries: {
      dcV: largerAmount(declaredHere(carries.dcV), onNets('dcV')),
      acV: largerAmount(declaredHere(carries.acV), onNets('acV')),
      pulseV: largerAmount(declaredHere(carries.pulseV), onNets('pulseV')),
      amps: declaredHere(carries.amps) ?? seriesAmps ?? solvedAmps(current)
    },
    coldDcV: onNets('coldDcV'),
    solvedDcV: onNets('solvedDcV')
  };
}

const solvedAmps = (current: WireCurrent | null): Amount | null =>
  current && {
    value: current.amps,
    how: 'solved',
    basis: current.basis,
    ...(current.doubt === undefined ? {} : { doubt: current.doubt })
  };
