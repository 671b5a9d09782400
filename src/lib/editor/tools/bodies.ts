// What can be moved on the sheet: a part, a component that hangs by its leads, a support. Where it
// stands, what it looks like elsewhere, and the edit that puts it there.
import { changeElement } from '#document/edits.ts';
import type { Edit } from '#document/index.ts';
import type { Subject } from '#drawing/display-list.ts';
import { drawHanging } from '#drawing/pictorial/draw-hanging.ts';
import { drawPart } from '#drawing/pictorial/draw-part.ts';
import type { PlacedBody } from '#drawing/pictorial/hanging-places.ts';
import { placePart, type PlacedPart } from '#drawing/pictorial/placed-part.ts';
import type { Home, Scene } from './scene.ts';
import type { PreviewShape, Spot, ToolWorld } from './tool.ts';

export interface Body {
  readonly subject: Subject;
  readonly name: string;
  readonly at: Spot;
  /** Clockwise, degrees, as seen from below. */
  readonly rotation: number;
  readonly home: Home | null;
  readonly placed: PlacedPart | null;
  readonly hanging: PlacedBody | null;
}

/** What a hand can take up of a subject: of a terminal its part. Null where it cannot be moved. */
export const bodyOf = ({ scene, study }: ToolWorld, subject: Subject): Body | null => {
  if (subject.kind === 'support') {
    const known = scene.geometry.places.supports.get(subject.id);
    if (!known) return null;
    const { support, at } = known;
    const home = scene.homeOf(support.unit);
    return { subject, name: support.name, at, rotation: 0, home, placed: null, hanging: null };
  }
  const id = subject.kind === 'terminal' ? subject.id.split('/')[0] : subject.id;
  if ((subject.kind !== 'part' && subject.kind !== 'terminal') || id === undefined) return null;
  const part = study.index.partById.get(id);
  if (!part) return null;
  const own = { subject: { kind: 'part', id }, name: part.reference } as const;
  const home = scene.homeOf(part.unit);
  const placed = scene.geometry.places.parts.get(id);
  if (placed) {
    const { at, rotation } = placed.pose;
    return { ...own, at, rotation, home, placed, hanging: null };
  }
  const hanging = scene.geometry.bodies.find((body) => body.part.id === id);
  if (!hanging) return null;
  return { ...own, at: hanging.middle, rotation: 0, home, placed: null, hanging };
};

/** The body at another place, turned. */
export const drawBodyAt = (
  { at, placed, hanging }: Body,
  to: Spot,
  rotation: number
): readonly PreviewShape[] => {
  if (placed) {
    const { part, terminals, pose, spots } = placed;
    const there = placePart(part, terminals, { ...pose, at: to, rotation }, false);
    const used = new Set(spots.keys());
    return [...drawPart(there, { used }), nameAt(part.reference, to)];
  }
  const [dx, dy] = [to.x - at.x, to.y - at.y];
  if (hanging)
    return drawHanging({
      ...hanging,
      middle: { x: hanging.middle.x + dx, y: hanging.middle.y + dy },
      leads: []
    });
  return [{ shape: { kind: 'circle', x: to.x, y: to.y, r: 2.2 }, style: 'hand.grip' }];
};

const nameAt = (text: string, { x, y }: Spot): PreviewShape => ({
  shape: { kind: 'text', x, y: y + 1, text, size: 2.8, anchor: 'middle', face: 'sans', bold: true },
  style: 'hand.name'
});

/** Where each of a part's terminals lies when the part stands elsewhere, by the study's key. */
export const terminalsAt = (
  { placed }: Body,
  to: Spot,
  rotation: number
): ReadonlyMap<string, Spot> => {
  if (!placed) return new Map();
  const { part, terminals, pose } = placed;
  const { spots } = placePart(part, terminals, { ...pose, at: to, rotation }, false);
  return new Map([...spots].map(([id, at]) => [`${part.id}/${id}`, at]));
};

const rounded = (value: number): number => Math.round(value * 100) / 100;

/** The unit that a body stands in when it is put down at a place. */
const homeThere = (scene: Scene, body: Body, to: Spot): Home | null => {
  const own = body.home;
  if (own?.box && isInside(own, to)) return own;
  const there = scene.homeAt(to);
  return there && (own === null || isInside(there, to)) ? there : own;
};

const isInside = ({ box }: Home, { x, y }: Spot): boolean =>
  box !== null && x >= box.x && y >= box.y && x <= box.x + box.width && y <= box.y + box.height;

/** The edit that puts a body down, by hand; null where the set has no unit to put it in. */
export const placeEdit = (
  scene: Scene,
  body: Body,
  to: Spot,
  rotation = body.rotation
): Edit | null => {
  const home = homeThere(scene, body, to);
  if (!home) return null;
  const at = scene.toUnit(home, to);
  const place = { x: rounded(at.x), y: rounded(at.y) };
  const unit = home.unit.id === body.home?.unit.id ? {} : { unit: home.unit.id };
  const { kind, id } = body.subject;
  if (kind === 'support') return changeElement('support', id, { ...unit, place });
  const turn = rotation === body.rotation ? {} : { rotation: rounded(rotation) };
  return changeElement('part', id, { ...unit, place: { ...place, ...turn, by: 'hand' } });
};

/** Units that nobody placed stay where they are drawn from now on, so that moving a part in one
 *  moves nothing else. */
export const holdHomes = ({ homes, face }: Scene): readonly Edit[] =>
  homes.flatMap(({ unit, box, corner }) =>
    unit.place !== undefined || box === null
      ? []
      : [
          changeElement('unit', unit.id, {
            place: { x: rounded(face === 'above' ? -corner.x : corner.x), y: rounded(corner.y) }
          })
        ]
  );
