// The tools of the drawing to scale, in the order of the rail.
import { dressWires } from './dress/dress-wires.ts';
import { placeSupports } from './dress/place-supports.ts';
import { measureLengths } from '../photos/measure-lengths.ts';
import { pickAndMove } from './pick-and-move.ts';
import { addTerminals } from './place/add-terminals.ts';
import { placeParts } from './place/place-parts.ts';
import { drawWires } from './wire/draw-wires.ts';
import { faceOf, type ToolFace } from './tool.ts';

/** The first is in use while no other is. */
export const toolFaces: readonly ToolFace[] = [
  faceOf(pickAndMove),
  faceOf(placeParts),
  faceOf(addTerminals),
  faceOf(drawWires),
  faceOf(placeSupports),
  faceOf(dressWires),
  faceOf(measureLengths)
];
