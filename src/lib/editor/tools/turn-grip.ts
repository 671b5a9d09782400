// The handle above a chosen part that turns it, by steps of 15 degrees, freely with Alt.
import type { Body } from './bodies.ts';
import type { Grip, Held } from './grip.ts';
import { bodiesOf, placeBodies, showBodies } from './move-grip.ts';
import { boxOfPart } from './scene.ts';
import type { PreviewShape, Spot, ToolWorld } from './tool.ts';

export const turnStep = 15;

/** How far above the part the handle stands, and how large it is, px. */
const armPx = 26;
const knobPx = 6;

/** The handle's knob, where exactly one part is chosen. */
const knobOf = (
  bodies: readonly Body[],
  { pxPerMm }: ToolWorld
): { body: Body; at: Spot; foot: Spot } | null => {
  const [body, second] = bodies;
  if (!body?.placed || body.placed.inTray || second) return null;
  const { x, y, width } = boxOfPart(body.placed);
  const middle = x + width / 2;
  return { body, at: { x: middle, y: y - armPx / pxPerMm }, foot: { x: middle, y: y - 1.6 } };
};

export const turnHandle = (bodies: readonly Body[], world: ToolWorld): readonly PreviewShape[] => {
  const knob = knobOf(bodies, world);
  if (!knob) return [];
  const { at, foot } = knob;
  return [
    { shape: { kind: 'line', points: [foot.x, foot.y, at.x, at.y] }, style: 'hand.guide' },
    { shape: { kind: 'circle', x: at.x, y: at.y, r: knobPx / world.pxPerMm }, style: 'hand.grip' }
  ];
};

/** The direction from a part's middle to the hand, degrees clockwise. */
const angleTo = (from: Spot, to: Spot): number =>
  (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;

/** Within half a turn of nothing. */
export const asTurn = (degrees: number): number => {
  const within = ((degrees % 360) + 360) % 360;
  return within > 180 ? within - 360 : within;
};

const hold = (body: Body, from: number, rotation: number): Held => {
  const placeOf = ({ at }: Body) => ({ at, rotation });
  return {
    drag: ({ at, alt }) => {
      const mirror = body.placed?.pose.mirrored === true ? -1 : 1;
      const turned = body.rotation + mirror * (angleTo(body.at, at) - from);
      return hold(body, from, asTurn(alt ? turned : Math.round(turned / turnStep) * turnStep));
    },
    show: (world) => {
      const { shapes, hidden } = showBodies(world, [body], placeOf);
      const words = { text: `${Math.round(rotation)}°`, at: body.at };
      return { shapes, hidden, words, cursor: 'grabbing' };
    },
    drop: (world) => (rotation === body.rotation ? [] : placeBodies(world, [body], placeOf, 'turn'))
  };
};

export const turnGrip: Grip = {
  take: ({ at, reachMm }, world, chosen) => {
    const knob = knobOf(bodiesOf(world, chosen), world);
    if (!knob) return null;
    const far = Math.hypot(at.x - knob.at.x, at.y - knob.at.y);
    if (far > reachMm + knobPx / world.pxPerMm) return null;
    return hold(knob.body, angleTo(knob.body.at, knob.at), knob.body.rotation);
  }
};
