// What the wires of the demonstrations were found as, and what takes their place. Colours follow the
// chassis wiring code by function; walls and ratings are those of an invented parts list.
import type { Wire } from '#document/index.ts';
import type { WireOptions } from '../helpers/chassis-options.ts';

const solid = { stranding: 'solid', plating: 'tinned' } as const;
const stranded = { stranding: 'stranded', plating: 'tinned' } as const;

/** Ordinary hook-up wire: 22 AWG solid, thermoplastic wall of 1/32 in, 600 V. */
export const thermoplastic = (colour: string): WireOptions => ({
  awg: 22,
  colour,
  insulation: 'thermoplastic, 1/32 in',
  ratingV: 600,
  found: solid
});

/** The same with half the wall: 300 V. */
export const thinWall = (colour: string): WireOptions => ({
  ...thermoplastic(colour),
  insulation: 'thermoplastic, 1/64 in',
  ratingV: 300
});

/** Cotton that slides back from the joint. Nobody ever printed a rating on it. */
export const pushBack = (colour: string): WireOptions => ({
  awg: 22,
  colour,
  insulation: 'cotton push-back',
  found: solid
});

/** Heater trunk: 18 AWG solid, 600 V. */
export const heaterTrunk = (amps: number): WireOptions => ({
  ...thermoplastic('brown'),
  awg: 18,
  amps,
  acV: 6.3,
  function: 'heaters 6.3 V'
});

/** A lead that comes out of a transformer. */
export const pigtail = (colour: string, ratingV: number, awg = 20): WireOptions => ({
  construction: 'pigtail',
  awg,
  colour: colour.split('/')[0] ?? colour,
  ...(colour.includes('/') ? { tracer: colour.split('/')[1] ?? '' } : {}),
  insulation: 'rubber under varnished cotton',
  ratingV,
  found: stranded
});

/** A conductor of the cable from the power unit, with the colour that it has in it. */
export const inPowerCable = (conductor: string): WireOptions => ({
  cable: 'power cable',
  conductor,
  tapedMm: 640
});

/** A stiff tinned wire without insulation of its own. */
export const bare = (awg = 20): WireOptions => ({ construction: 'bare bus', awg, found: solid });

/** A flat braid to the metal. */
export const braid: WireOptions = {
  construction: 'braid',
  dcV: 0,
  found: { ...stranded, insulation: 'none' }
};

/** New 600 V hook-up wire, 105 C. */
export const newWire = (colour: string, awg = 22): Wire['planned'] => ({
  way: 'new wire',
  style: 'UL 1015',
  awg,
  colour,
  ...solid
});
