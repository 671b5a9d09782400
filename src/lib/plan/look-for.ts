// What to look for where the shelf has nothing: in general terms, which any dealer understands.
import { formatAwg, formatCelsius, formatVolts } from '#quantity/index.ts';
import type { VoltsKind, WireWant } from './types.ts';

const kindWords: Readonly<Record<VoltsKind, string>> = {
  dc: 'dc',
  ac: 'ac (peak)',
  pulse: 'recurring pulses'
};

/** From here on it is a lead made for high voltage rather than hook-up wire. Common practice, no source. */
const highVoltageV = 3000;

/** "22 AWG solid tinned hook-up wire, insulation rated 600 V for dc at least, 85 °C at least, red". */
export function lookFor(want: WireWant): string {
  const conductor = `${formatAwg(want.awg)} ${want.stranding} ${want.plating} copper`;
  if (want.form === 'bare') return `bare bus wire, ${conductor}`;
  if (want.form === 'braid') return `flat tinned copper braid of the width that was there`;
  if (want.form === 'coax' || want.form === 'twin lead')
    return `${want.form} of the impedance and outside diameter that was there, rated ${formatVolts(want.classV)} at least`;
  if (want.form === 'cable')
    return `cable with the conductors and shield that were there, ${conductor}, rated ${formatVolts(want.classV)} at least`;
  const isHigh = want.classV >= highVoltageV;
  const what = isHigh ? 'high-voltage lead, silicone rubber or polyethylene over' : 'hook-up wire,';
  const kinds = want.kinds.map((kind) => kindWords[kind]);
  const holds = kinds.length === 0 ? '' : ` for ${kinds.join(' and ')}`;
  const colour = [want.colour, want.tracer === null ? null : `${want.tracer} tracer`]
    .filter((word) => word !== null)
    .join(' with ');
  return [
    `${what} ${conductor}`,
    `insulation rated ${formatVolts(want.classV)}${holds} at least`,
    `${formatCelsius(want.celsius)} at least (${want.celsiusBasis})`,
    ...(colour === '' ? [] : [colour])
  ].join(', ');
}
