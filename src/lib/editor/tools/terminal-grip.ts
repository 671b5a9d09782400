// Takes up one terminal of a part, once that terminal is picked: its place on the part is measured anew.
import { changeElement } from '#document/edits.ts';
import type { PlacedPart } from '#drawing/pictorial/placed-part.ts';
import type { Grip, Held } from './grip.ts';
import { looseLines } from './loose-lines.ts';
import { toOffset } from './place/add-terminals.ts';
import { gridMm, snap, type Snapped } from './snapping.ts';
import type { Spot } from './tool.ts';

const drawPx = 6;
const ringMm = 1.5;

const hold = (placed: PlacedPart, terminal: string, from: Spot, now: Snapped): Held => ({
  drag: (event, world) => {
    const others = [...placed.spots].flatMap(([id, at]) => (id === terminal ? [] : [at]));
    const rest = snap(event.at, {
      others: [...others, placed.pose.at],
      reachMm: drawPx / world.pxPerMm,
      gridMm: gridMm(world.lengthUnit) / 2,
      origin: placed.pose.at,
      free: event.alt
    });
    return hold(placed, terminal, from, rest);
  },
  show: (world) => {
    const { at, guides } = now;
    const key = `${placed.part.id}/${terminal}`;
    const lines = looseLines(world, new Map([[key, at]]));
    const ring = { kind: 'circle', x: at.x, y: at.y, r: ringMm } as const;
    return {
      shapes: [...guides, ...lines.shapes, { shape: ring, style: 'hand.grip' }],
      hidden: new Set([`terminal ${key}`, ...lines.hidden]),
      cursor: 'grabbing'
    };
  },
  drop: () => {
    if (now.at.x === from.x && now.at.y === from.y) return [];
    const { id } = placed.part;
    const { x, y } = toOffset(placed, now.at);
    return [
      {
        kind: 'edit',
        edit: changeElement('part', id, { terminals: { [terminal]: { offset: { x, y } } } })
      }
    ];
  }
});

export const terminalGrip: Grip = {
  take: ({ subject }, { pick, scene }) => {
    if (subject?.kind !== 'terminal' || pick?.kind !== 'terminal' || pick.id !== subject.id) {
      return null;
    }
    const [part = '', terminal = ''] = subject.id.split('/');
    const placed = scene.geometry.places.parts.get(part);
    const at = placed?.spots.get(terminal);
    if (!placed || !at || placed.inTray) return null;
    return hold(placed, terminal, at, { at, guides: [] });
  }
};
