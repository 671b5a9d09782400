// What can be taken up and dragged with Pick and move: parts, supports, terminals, and whatever else
// joins the list. A grip answers whether it takes a drag; what it then holds answers for itself.
import type { Drag, Grab, ToolAction, ToolPreview, ToolWorld } from './tool.ts';

/** Something in the hand. Each move makes the next; nothing is changed before it is let go. */
export interface Held {
  readonly drag: (event: Drag, world: ToolWorld) => Held;
  readonly show: (world: ToolWorld) => ToolPreview;
  /** What letting go does; nothing, where it came back to where it was. */
  readonly drop: (world: ToolWorld) => readonly ToolAction[];
}

export interface Grip {
  /** What is held after a drag began at `event.at`, or null where this grip does not take it.
   *  `chosen` are the keys of what is chosen together. */
  readonly take: (event: Grab, world: ToolWorld, chosen: ReadonlySet<string>) => Held | null;
}
