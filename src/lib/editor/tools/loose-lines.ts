// Wires whose terminals are in the hand: light strokes from where the terminal now is to where the wire
// goes next, in the colour of its class.
import { classBandOf } from '#study/index.ts';
import type { PreviewShape, Spot, ToolWorld } from './tool.ts';

export interface LooseLines {
  readonly shapes: readonly PreviewShape[];
  /** Keys of the subjects that the strokes stand for. */
  readonly hidden: readonly string[];
}

/** The wires, and the leads of components, at terminals that are moved.
 *  @param moved where each moved terminal now is */
export const looseLines = (
  { study, scene }: ToolWorld,
  moved: ReadonlyMap<string, Spot>
): LooseLines => {
  const shapes: PreviewShape[] = [];
  const hidden = new Set<string>();
  const spotOf = (key: string | undefined): Spot | undefined =>
    key === undefined ? undefined : (moved.get(key) ?? scene.terminalByKey.get(key)?.at);
  for (const key of moved.keys()) {
    for (const wire of study.index.wiresAt.get(key) ?? []) {
      const subject = `wire ${wire.id}`;
      if (hidden.has(subject)) continue;
      hidden.add(subject);
      const [from, to] = [wire.from, wire.to].map((end) =>
        end.at ? spotOf(`${end.at.part}/${end.at.terminal}`) : undefined
      );
      const supports = (wire.route?.supports ?? []).flatMap(
        (id) => scene.geometry.places.supports.get(id)?.at ?? []
      );
      const stops = [from, ...supports, to].flatMap((stop) => stop ?? []);
      if (stops.length < 2) continue;
      const band = classBandOf(study.wires.get(wire.id)?.need?.requiredV ?? null);
      shapes.push(lineThrough(stops, `wire.${band}`));
    }
  }
  for (const { part, leads, middle } of scene.geometry.bodies) {
    const feet = leads.map(({ terminal, line, isFree }) => {
      const on = part.terminals[terminal]?.on;
      const spot = on && moved.get(`${on.part}/${on.terminal}`);
      return { at: spot ?? (isFree ? undefined : line.at(-1)), isMoved: spot !== undefined };
    });
    if (!feet.some(({ isMoved }) => isMoved)) continue;
    hidden.add(`part ${part.id}`);
    for (const { id } of Object.values(part.terminals)) hidden.add(`terminal ${part.id}/${id}`);
    for (const { at } of feet) if (at) shapes.push(lineThrough([middle, at], 'lead'));
  }
  return { shapes, hidden: [...hidden] };
};

const lineThrough = (stops: readonly Spot[], style: string): PreviewShape => ({
  shape: { kind: 'line', points: stops.flatMap(({ x, y }) => [x, y]) },
  style
});
