// Where everything stands on the sheet: units at their places or beside one another, parts in their
// units, parts without a place in trays, supports. True to scale, a millimetre of the set a millimetre here.
import type { Id, Part, Photo, Support, Terminal, Unit } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { sortByOrder } from '#document/order.ts';
import type { Study } from '#study/index.ts';
import type { Box } from '../figures/figure.ts';
import { isUnderlay, placePhotos, type PlacedPhoto } from '../photos/place-photos.ts';
import { photoOutlineInUnit } from '../photos/lay-photo.ts';
import type { Spot } from '../presentation/sides.ts';
import { boxAround, cornersOf } from './boxes.ts';
import { hasLeadsOnly } from './outlines.ts';
import { outlineCorners, placePart, type PlacedPart } from './placed-part.ts';
import { fillTray, findFreeBox, gapMm } from './tray.ts';
import { plus } from './vectors.ts';

export type Face = 'below' | 'above';

export interface PlacedUnit {
  readonly unit: Unit;
  readonly box: Box;
  /** Where on the sheet the unit's own origin lies: its parts' places are counted from there. */
  readonly corner: Spot;
}

export interface PlacedTray {
  readonly id: string;
  readonly name: string;
  readonly box: Box;
}

export interface PlacedSupport {
  readonly support: Support;
  readonly at: Spot;
}

/** A component that hangs by its leads: no place of its own, or one for its body alone. */
export interface HangingPart {
  readonly part: Part;
  readonly terminals: readonly Terminal[];
  /** Where its body was measured to be. */
  readonly at: Spot | null;
}

export interface SheetPlaces {
  readonly units: readonly PlacedUnit[];
  readonly trays: readonly PlacedTray[];
  readonly parts: ReadonlyMap<Id, PlacedPart>;
  readonly hanging: readonly HangingPart[];
  readonly supports: ReadonlyMap<Id, PlacedSupport>;
  /** The photos under the drawing that are seen from this side, lowest first. */
  readonly photos: readonly PlacedPhoto[];
}

interface Home {
  readonly unit: Unit | null;
  readonly name: string;
  readonly parts: readonly Part[];
  readonly supports: readonly Support[];
  /** Underlays of both sides, shown or not: a unit's outline is not to jump as they are hidden. */
  readonly photos: readonly Photo[];
}

const rim = 14;
const smallest = { width: 60, height: 40 };

/** Units in order with what stands in them; parts whose unit is missing come last. */
function listHomes(study: Study): Home[] {
  const { document, index } = study;
  const supports = sortByOrder(document.supports);
  const photos = sortByOrder(document.photos).filter(isUnderlay);
  const homes: Home[] = sortByOrder(document.units).map((unit) => ({
    unit,
    name: unit.name,
    parts: index.parts.filter((part) => part.unit === unit.id),
    supports: supports.filter((support) => support.unit === unit.id),
    photos: photos.filter((photo) => photo.unit === unit.id)
  }));
  const parts = index.parts.filter((part) => !findElement(document.units, part.unit));
  if (parts.length > 0)
    homes.push({ unit: null, name: 'No unit given', parts, supports: [], photos: [] });
  return homes;
}

/** A component is drawn by its hosts where at least one of them is placed, or leads to one that is. */
function listHanging(study: Study): Set<Id> {
  const { index } = study;
  const hanging = new Set<Id>();
  const isPlaced = (part: Part | undefined): boolean =>
    part !== undefined && (part.place !== undefined || hanging.has(part.id));
  for (let grew = true; grew;) {
    grew = false;
    for (const part of index.parts) {
      const terminals = index.terminalsOf.get(part.id) ?? [];
      if (hanging.has(part.id) || !hasLeadsOnly(part, terminals)) continue;
      if (!terminals.some(({ on }) => on && isPlaced(index.partById.get(on.part)))) continue;
      hanging.add(part.id);
      grew = true;
    }
  }
  return hanging;
}

/** The outline of a unit from its own corner, as seen from below: as measured, else round its parts and
 *  its photos. */
function ownBox(home: Home, placed: readonly Spot[]): Box | null {
  const size = home.unit?.size;
  if (size) return { x: 0, y: 0, width: size.width, height: size.height };
  const { unit, photos } = home;
  const shown = photos.flatMap((photo) => photoOutlineInUnit(photo, unit));
  if (placed.length === 0) return shown.length > 0 ? boxAround(shown) : null;
  const { x, y, width, height } = boxAround(placed);
  const round = {
    x: x - rim,
    y: y - rim,
    width: Math.max(width + 2 * rim, smallest.width),
    height: Math.max(height + 2 * rim, smallest.height)
  };
  return boxAround([...cornersOf(round), ...shown]);
}

interface Arranged {
  readonly home: Home;
  /** From the unit's corner. */
  readonly box: Box;
  readonly corner: Spot;
}

/** Where each unit's corner lies, seen from below: as placed, and units that nobody placed in rows
 *  below the others, in their order. */
function arrangeHomes(homes: readonly Home[], study: Study): Arranged[] {
  const own = homes.flatMap((home) => {
    const box = ownBox(home, spotsIn(home, study));
    return box ? [{ home, box }] : [];
  });
  const fixed = own.flatMap(({ home, box }): Arranged[] => {
    const corner = home.unit?.place;
    return corner ? [{ home, box, corner }] : [];
  });
  const left = Math.min(...fixed.map(({ box, corner }) => corner.x + box.x), Infinity);
  const right = Math.max(
    ...fixed.map(({ box, corner }) => corner.x + box.x + box.width),
    -Infinity
  );
  const bottom = Math.max(
    ...fixed.map(({ box, corner }) => corner.y + box.y + box.height),
    -Infinity
  );
  const start = fixed.length > 0 ? { x: left, y: bottom + gapMm } : { x: 0, y: 0 };
  const rowWidth = Math.max(fixed.length > 0 ? right - left : 0, 700);
  let [x, y, rowHeight] = [start.x, start.y, 0];
  return own.map(({ home, box }) => {
    const known = fixed.find((one) => one.home === home);
    if (known) return known;
    if (x > start.x && x + box.width > start.x + rowWidth) {
      x = start.x;
      y += rowHeight + gapMm;
      rowHeight = 0;
    }
    const corner = { x: x - box.x, y: y - box.y };
    x += box.width + gapMm;
    rowHeight = Math.max(rowHeight, box.height);
    return { home, box, corner };
  });
}

/** Supports and the outlines of the parts that have a place in a unit, from its corner. */
function spotsIn(home: Home, { index }: Study): Spot[] {
  return [
    ...home.supports.map(({ place }) => place),
    ...home.parts.flatMap((part) => {
      if (!part.place) return [];
      const pose = { at: part.place, rotation: part.place.rotation ?? 0, mirrored: false };
      return outlineCorners(placePart(part, index.terminalsOf.get(part.id) ?? [], pose, false));
    })
  ];
}

/** Everything of the set with its place on the sheet. Seen from above, right and left trade places.
 *  What a hand placed is never moved; what has no place is put where nothing else is. */
export function placeOnSheet(study: Study, face: Face): SheetPlaces {
  const { index } = study;
  const mirrored = face === 'above';
  const hangs = listHanging(study);
  const homes = listHomes(study);
  const parts = new Map<Id, PlacedPart>();
  const bodies = new Map<Id, Spot>();
  const supports = new Map<Id, PlacedSupport>();
  const units: PlacedUnit[] = [];
  const terminalsOf = (part: Part): readonly Terminal[] => index.terminalsOf.get(part.id) ?? [];
  for (const { home, box, corner } of arrangeHomes(homes, study)) {
    const spot = ({ x, y }: Spot): Spot => {
      const at = plus(corner, { x, y });
      return mirrored ? { x: -at.x, y: at.y } : at;
    };
    if (home.unit) {
      const { x, y } = spot({ x: mirrored ? box.x + box.width : box.x, y: box.y });
      units.push({ unit: home.unit, box: { ...box, x, y }, corner: spot({ x: 0, y: 0 }) });
    }
    for (const support of home.supports) {
      supports.set(support.id, { support, at: spot(support.place) });
    }
    for (const part of home.parts) {
      if (!part.place || hangs.has(part.id)) continue;
      const pose = { at: spot(part.place), rotation: part.place.rotation ?? 0, mirrored };
      parts.set(part.id, placePart(part, terminalsOf(part), pose, false));
    }
    for (const part of home.parts) {
      if (part.place && hangs.has(part.id)) bodies.set(part.id, spot(part.place));
    }
  }
  const hanging = index.parts
    .filter(({ id }) => hangs.has(id))
    .map((part) => ({ part, terminals: terminalsOf(part), at: bodies.get(part.id) ?? null }));
  const trays: PlacedTray[] = [];
  const taken = units.map(({ box }) => box);
  for (const home of homes) {
    const loose = home.parts.filter(({ id }) => !parts.has(id) && !hangs.has(id));
    if (loose.length === 0) continue;
    trays.push(layTray(home, loose, { units, parts, taken, mirrored, terminalsOf }));
  }
  const photos = placePhotos(study.document.photos, units, face);
  return { units, trays, parts, hanging, supports, photos };
}

interface TrayRoom {
  readonly units: readonly PlacedUnit[];
  readonly parts: Map<Id, PlacedPart>;
  readonly taken: Box[];
  readonly mirrored: boolean;
  readonly terminalsOf: (part: Part) => readonly Terminal[];
}

/** Room for a part's name below it, mm. */
const nameRoom = 9;

function layTray(home: Home, loose: readonly Part[], room: TrayRoom): PlacedTray {
  const { units, parts, taken, mirrored, terminalsOf } = room;
  const atZero = { at: { x: 0, y: 0 }, rotation: 0, mirrored };
  const samples = loose.map((part) => placePart(part, terminalsOf(part), atZero, true));
  const boxes = samples.map((sample) =>
    boxAround([...outlineCorners(sample), ...sample.spots.values()])
  );
  const sizes = boxes.map(({ width, height }) => ({
    width: Math.max(width, 16) + 6,
    height: height + nameRoom + 4
  }));
  const own = units.find(({ unit }) => unit.id === home.unit?.id)?.box ?? null;
  const area = sizes.reduce((sum, { width, height }) => sum + width * height, 0);
  const tray = fillTray(sizes, Math.max(own?.width ?? 0, Math.sqrt(area * 2.2), 120));
  const box = findFreeBox(tray, own, taken);
  taken.push(box);
  loose.forEach((part, index) => {
    const middle = tray.middles[index];
    const bounds = boxes[index];
    if (!middle || !bounds) return;
    const at = {
      x: box.x + middle.x - (bounds.x + bounds.width / 2),
      y: box.y + middle.y - (bounds.y + bounds.height / 2) - nameRoom / 2
    };
    parts.set(part.id, placePart(part, terminalsOf(part), { ...atZero, at }, true));
  });
  return { id: home.unit?.id ?? 'none', name: home.name, box };
}
