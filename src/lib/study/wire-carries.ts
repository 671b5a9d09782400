// What one wire carries: the larger of what it declares itself and what stands on its net.
import type { Wire } from '#document/index.ts';
import { largerAmount } from './amounts.ts';
import type { Amount, Net, WireStudy } from './types.ts';

const declaredHere = (value: number | undefined): Amount | null =>
  value === undefined ? null : { value, how: 'declared', basis: 'declared on this wire' };

type VoltKind = 'dcV' | 'acV' | 'pulseV' | 'coldDcV';

/** Volts of a wire, and what its nets rise to cold.
 *  @param nets none, one, or two for a wire that does not join its ends
 *  @param amps from a series run, where the wire declares none */
export function carriesOf(
  wire: Wire,
  nets: readonly Net[],
  amps: Amount | null
): WireStudy['carries'] & { readonly coldDcV: Amount | null } {
  const onNets = (kind: VoltKind) =>
    nets.reduce<Amount | null>((worst, net) => largerAmount(worst, net[kind]), null);
  const { carries } = wire;
  return {
    dcV: largerAmount(declaredHere(carries.dcV), onNets('dcV')),
    acV: largerAmount(declaredHere(carries.acV), onNets('acV')),
    pulseV: largerAmount(declaredHere(carries.pulseV), onNets('pulseV')),
    coldDcV: onNets('coldDcV'),
    amps: declaredHere(carries.amps) ?? amps
  };
}
