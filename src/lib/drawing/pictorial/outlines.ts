// What a part looks like from the wiring side, and the outline that its terminals leave room for.
// Nobody measures a can to record a wire: an outline follows the terminals, which are measured.
import type { Part, Terminal } from '#document/index.ts';
import type { Spot } from '../presentation/sides.ts';
import { splitPins } from './terminal-offsets.ts';

export const looks = [
  'socket',
  'picture tube',
  'strip',
  'post',
  'mark',
  'core',
  'tuned can',
  'can',
  'control',
  'round connector',
  'connector',
  'body',
  'yoke',
  'speaker',
  'antenna',
  'lamp',
  'switch',
  'box'
] as const;
export type Look = (typeof looks)[number];

/** From the part's middle before it is turned, mm. */
export type Outline =
  | { readonly kind: 'circle'; readonly r: number }
  | {
      readonly kind: 'box';
      readonly left: number;
      readonly top: number;
      readonly right: number;
      readonly bottom: number;
    };

const twoLeadKinds: readonly string[] = [
  'resistor',
  'capacitor',
  'coil',
  'fuse',
  'rectifier',
  'crystal'
];

/** A component that hangs by its leads: it has a body and no lugs of its own. */
export const hasLeadsOnly = (part: Part, terminals: readonly Terminal[]): boolean =>
  terminals.length >= 2 &&
  (terminals.every(({ on }) => on !== undefined) ||
    (part.place === undefined && terminals.some(({ on }) => on !== undefined)) ||
    (twoLeadKinds.includes(part.kind) && terminals.every(({ offset, on }) => !offset || on)));

/** Which picture a part gets. */
export function lookOf(part: Part, terminals: readonly Terminal[]): Look {
  const count = terminals.length;
  const pigtails = terminals.some(({ ending }) => ending === 'pigtail');
  switch (part.kind) {
    case 'tube':
      return splitPins(terminals).pins.length >= 3 ? 'socket' : 'box';
    case 'picture tube':
      return splitPins(terminals).pins.length >= 3 ? 'picture tube' : 'box';
    case 'terminal strip':
      return count === 1 ? 'post' : 'strip';
    case 'ground lug':
    case 'splice':
    case 'clip':
      return count === 1 ? 'mark' : 'strip';
    case 'transformer':
      return pigtails || count > 6 ? 'core' : 'tuned can';
    case 'coil':
      return pigtails ? 'core' : count > 2 ? 'tuned can' : 'body';
    case 'capacitor':
      return terminals.some(({ name }) => /frame|rotor|stator/i.test(name)) || count > 4
        ? 'box'
        : terminals.some(({ ending }) => ending === 'solder lug')
          ? 'can'
          : 'body';
    case 'control':
      return 'control';
    case 'plug':
    case 'jack':
      return count > 3 ? 'round connector' : 'connector';
    case 'resistor':
    case 'fuse':
    case 'rectifier':
    case 'crystal':
      return count === 2 ? 'body' : 'box';
    case 'yoke':
    case 'speaker':
    case 'antenna':
    case 'lamp':
    case 'switch':
      return part.kind;
    default:
      return 'box';
  }
}

const around = (spots: readonly Spot[], x: number, y: number): Outline => ({
  kind: 'box',
  left: Math.min(0, ...spots.map((spot) => spot.x)) - x,
  right: Math.max(0, ...spots.map((spot) => spot.x)) + x,
  top: Math.min(0, ...spots.map((spot) => spot.y)) - y,
  bottom: Math.max(0, ...spots.map((spot) => spot.y)) + y
});

const reachOf = (spots: readonly Spot[]): number =>
  Math.max(0, ...spots.map(({ x, y }) => Math.hypot(x, y)));

/** True where the lugs of a row stand side by side rather than one above the other. */
export const isLevelRow = (spots: readonly Spot[]): boolean => {
  const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  return spots.length < 2 || spread(spots.map(({ x }) => x)) >= spread(spots.map(({ y }) => y));
};

/** A core whose leads come out at its edges: the edges lie where the leads are. */
function coreOutline(spots: readonly Spot[]): Outline {
  const halfX = reachOf(spots.map(({ x }) => ({ x, y: 0 })));
  const halfY = reachOf(spots.map(({ y }) => ({ x: 0, y })));
  const rows = new Set(spots.map(({ y }) => y)).size;
  const columns = new Set(spots.map(({ x }) => x)).size;
  // Leads in rows leave above and below, and the core is wider than they stand; in columns the other way.
  const level = rows <= columns;
  const x = Math.max(9, level ? halfX + 6 : halfX);
  const y = Math.max(9, level ? halfY : halfY + 6);
  return { kind: 'box', left: -x, right: x, top: -y, bottom: y };
}

/** The outline of a part with this look, its terminals at these offsets.
 *  @param pins the offsets of its numbered pins alone */
export function outlineOf(look: Look, spots: readonly Spot[], pins: readonly Spot[]): Outline {
  switch (look) {
    case 'socket':
    case 'picture tube':
      return { kind: 'circle', r: reachOf(pins) + 2.2 };
    case 'strip':
      return isLevelRow(spots) ? around(spots, 5, 3.4) : around(spots, 3.4, 5);
    case 'post':
      return { kind: 'circle', r: 4 };
    case 'mark':
      return { kind: 'circle', r: 2.4 };
    case 'core':
      return coreOutline(spots);
    case 'can':
      return { kind: 'circle', r: Math.max(9, reachOf(spots) + 3) };
    case 'control':
      return { kind: 'circle', r: Math.max(7, reachOf(spots) - 2.6) };
    case 'round connector':
      return { kind: 'circle', r: reachOf(spots) + 3.2 };
    case 'connector':
      return isLevelRow(spots) ? around(spots, 4.5, 4.5) : around(spots, 4.5, 4.5);
    case 'speaker':
      return { kind: 'circle', r: reachOf(spots) + 14 };
    case 'lamp':
      return { kind: 'circle', r: Math.max(5, reachOf(spots) + 1.5) };
    case 'yoke':
    case 'tuned can':
      return around(spots, 3.4, 3.4);
    case 'antenna':
      return around(spots, 8, 3.4);
    case 'body':
      return isLevelRow(spots) ? around(spots, 1, 3) : around(spots, 3, 1);
    case 'switch':
    case 'box':
      return around(spots, 4.5, 4.5);
  }
}
