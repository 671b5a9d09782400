// Wires that share a net share their trouble: one finding for all of them.
import type { Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';

/** The wires in groups of one net each, in order; a wire on no net is a group of its own. */
export function groupByNet(study: Study, wires: readonly Wire[]): readonly (readonly Wire[])[] {
  const groups = new Map<string, Wire[]>();
  for (const wire of wires) {
    const key = study.wires.get(wire.id)?.net ?? `wire ${wire.id}`;
    const group = groups.get(key);
    if (group) group.push(wire);
    else groups.set(key, [wire]);
  }
  return [...groups.values()];
}
