// Tube bases: how many pins, on what circle, at which angles, as seen from below (the wiring side).
// Pins count clockwise from the key or the wide gap.
import { fromMemory, verified, type Sourced } from './source.ts';

export const baseIds = [
  '4-pin',
  '5-pin',
  '6-pin',
  '7-pin',
  '7-pin medium',
  'octal',
  'loctal',
  '7-pin miniature',
  'noval',
  'duodecar',
  'novar',
  'magnoval',
  'duodecal',
  'neo eightar'
] as const;
export type BaseId = (typeof baseIds)[number];

export interface TubeBase extends Sourced {
  readonly id: BaseId;
  readonly name: string;
  /** Pins are named "1" to this number, clockwise seen from below. */
  readonly pins: number;
  /** Diameter of the circle through the pin centres, mm. */
  readonly circleMm: number;
  /** Thickness of an ordinary pin, mm. */
  readonly pinMm: number;
  /** Degrees clockwise from the key or gap to pin 1, seen from below. */
  readonly firstDeg: number;
  /** Degrees from pin to pin. */
  readonly stepDeg: number;
  /** What tells pin 1: a key on the spigot, or the wide gap, or two thick pins. */
  readonly index: 'key' | 'gap' | 'thick pins';
  /** Other names that people write for it, in small letters. */
  readonly alsoCalled: readonly string[];
  readonly note?: string;
}

const pinTables =
  'published table of tube base dimensions; octal also on the 6V6GT outline drawing';
const approximate =
  'spacing from memory and evenly divided: true enough for a drawing, not for a drill';

const evenly = (pins: number) => ({ pins, firstDeg: 180 / pins, stepDeg: 360 / pins });

export const tubeBases: readonly TubeBase[] = [
  {
    id: '4-pin',
    name: '4-pin (UX)',
    ...evenly(4),
    circleMm: 16.3,
    pinMm: 3.2,
    index: 'thick pins',
    alsoCalled: ['ux', 'ux4', '4 pin', 'four-pin'],
    note: `pins 1 and 4 are the thick ones; ${approximate}`,
    ...fromMemory
  },
  {
    id: '5-pin',
    name: '5-pin (UY)',
    ...evenly(5),
    circleMm: 19.05,
    pinMm: 3.2,
    index: 'gap',
    alsoCalled: ['uy', 'uy5', '5 pin', 'five-pin'],
    note: approximate,
    ...fromMemory
  },
  {
    id: '6-pin',
    name: '6-pin',
    ...evenly(6),
    circleMm: 19.05,
    pinMm: 3.2,
    index: 'thick pins',
    alsoCalled: ['ux6', '6 pin', 'six-pin'],
    note: `pins 1 and 6 are the thick ones; ${approximate}`,
    ...fromMemory
  },
  {
    id: '7-pin',
    name: '7-pin small',
    ...evenly(7),
    circleMm: 19.05,
    pinMm: 3.2,
    index: 'thick pins',
    alsoCalled: ['ux7', '7-pin small', 'small 7-pin'],
    note: `pins 1 and 7 are the thick ones; ${approximate}`,
    ...fromMemory
  },
  {
    id: '7-pin medium',
    name: '7-pin medium',
    ...evenly(7),
    circleMm: 21.7,
    pinMm: 3.2,
    index: 'thick pins',
    alsoCalled: ['medium 7-pin'],
    note: `pins 1 and 7 are the thick ones; ${approximate}`,
    ...fromMemory
  },
  {
    id: 'octal',
    name: 'octal',
    pins: 8,
    circleMm: 17.46,
    pinMm: 2.36,
    firstDeg: 22.5,
    stepDeg: 45,
    index: 'key',
    alsoCalled: ['8-pin', 'international octal', 'io', 'k8a'],
    note: 'circle 11/16 in; pins that a type does not use may be missing',
    ...verified(pinTables)
  },
  {
    id: 'loctal',
    name: 'loctal',
    pins: 8,
    circleMm: 17.45,
    pinMm: 1.3,
    firstDeg: 22.5,
    stepDeg: 45,
    index: 'key',
    alsoCalled: ['loktal', 'lock-in', 'b8g'],
    ...fromMemory
  },
  {
    id: '7-pin miniature',
    name: '7-pin miniature',
    pins: 7,
    circleMm: 9.525,
    pinMm: 1.02,
    firstDeg: 45,
    stepDeg: 45,
    index: 'gap',
    alsoCalled: [
      'miniature',
      'b7g',
      '7 pin mini',
      '7-pin mini',
      'mini 7',
      '7-pin min',
      '7 pin miniature'
    ],
    note: 'circle 3/8 in; eight places at 45 degrees, one of them blank',
    ...verified(pinTables)
  },
  {
    id: 'noval',
    name: 'noval (9-pin miniature)',
    pins: 9,
    circleMm: 11.906,
    pinMm: 1.02,
    firstDeg: 36,
    stepDeg: 36,
    index: 'gap',
    alsoCalled: ['9-pin', '9 pin', 'b9a', '9-pin miniature', '9 pin miniature', '9-pin mini'],
    note: 'circle 15/32 in; ten places at 36 degrees, one of them blank',
    ...verified(pinTables)
  },
  {
    id: 'duodecar',
    name: 'duodecar (12-pin)',
    pins: 12,
    circleMm: 19.05,
    pinMm: 1.02,
    firstDeg: 360 / 13,
    stepDeg: 360 / 13,
    index: 'gap',
    alsoCalled: ['12-pin', '12 pin', 'e12-70'],
    note: 'circle 0.750 in; thirteen places, one of them blank',
    ...fromMemory
  },
  {
    id: 'novar',
    name: 'novar',
    pins: 9,
    circleMm: 17.45,
    pinMm: 1.02,
    firstDeg: 36,
    stepDeg: 36,
    index: 'gap',
    alsoCalled: ['b9e', 'e9-75', 'e9-76'],
    ...fromMemory
  },
  {
    id: 'magnoval',
    name: 'magnoval',
    pins: 9,
    circleMm: 17.45,
    pinMm: 1.27,
    firstDeg: 36,
    stepDeg: 36,
    index: 'gap',
    alsoCalled: ['b9d'],
    ...fromMemory
  },
  {
    id: 'duodecal',
    name: 'duodecal (picture tube)',
    pins: 12,
    circleMm: 27,
    pinMm: 2.36,
    firstDeg: 15,
    stepDeg: 30,
    index: 'key',
    alsoCalled: ['b12a', 'duodecal 7-pin', 'duodecal 6-pin', 'duodecal 5-pin'],
    note: 'most picture tubes carry only five to seven of the twelve pins',
    ...fromMemory
  },
  {
    id: 'neo eightar',
    name: 'neo eightar (110-degree picture tube)',
    pins: 8,
    circleMm: 15.2,
    pinMm: 1.02,
    firstDeg: 40,
    stepDeg: 40,
    index: 'gap',
    alsoCalled: ['b8h', 'small-button neo eightar'],
    note: approximate,
    ...fromMemory
  }
];

const basesById: ReadonlyMap<string, TubeBase> = new Map(tubeBases.map((base) => [base.id, base]));
const basesByName: ReadonlyMap<string, TubeBase> = new Map(
  tubeBases.flatMap((base) =>
    [base.id, base.name, ...base.alsoCalled].map((name) => [name.toLowerCase(), base] as const)
  )
);

/** The base with this id. Every `BaseId` has one. */
export const tubeBaseOf = (id: BaseId): TubeBase => {
  const base = basesById.get(id);
  if (!base) throw new RangeError(`no tube base is called ${JSON.stringify(id)}`);
  return base;
};

/** The base that people mean by a name such as "B9A", "9-pin" or "Octal"; null where none is known. */
export const findTubeBase = (text: string): TubeBase | null =>
  basesByName.get(
    text
      .trim()
      .toLowerCase()
      .replace(/\s+/g, ' ')
      .replace(/ socket$/, '')
  ) ?? null;

/** A pin's centre, in mm from the middle of the base, as seen from below: x right, y down.
 *  The key or gap points down the page, as basing diagrams draw it. */
export interface PinPlace {
  readonly pin: string;
  readonly x: number;
  readonly y: number;
}

/** Where each pin of a base stands, in order of pin number; mm, seen from below. */
export const pinPlaces = (base: TubeBase | BaseId): readonly PinPlace[] => {
  const { pins, circleMm, firstDeg, stepDeg } = typeof base === 'string' ? tubeBaseOf(base) : base;
  return Array.from({ length: pins }, (_, index) => {
    const angle = ((firstDeg + index * stepDeg) * Math.PI) / 180;
    const round = (value: number) => Math.round(value * 1000) / 1000 + 0;
    return {
      pin: String(index + 1),
      x: round((-circleMm / 2) * Math.sin(angle)),
      y: round((circleMm / 2) * Math.cos(angle))
    };
  });
};

export interface TopCap extends Sourced {
  readonly id: 'miniature' | 'small' | 'medium';
  readonly name: string;
  /** Outside diameter of the cap's button, mm. */
  readonly diameterMm: number;
}

/** Caps that leave a tube at its top: the connector must be the one that fits. */
export const topCaps: readonly TopCap[] = [
  { id: 'miniature', name: 'miniature cap, 1/4 in', diameterMm: 6.35, ...fromMemory },
  { id: 'small', name: 'small cap, 3/8 in', diameterMm: 9.1, ...fromMemory },
  { id: 'medium', name: 'medium cap, 9/16 in', diameterMm: 14.4, ...fromMemory }
];
