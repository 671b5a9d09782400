// What is connected when all switches are open, and when all are closed: for questions that must be asked
// of both.
import { isKnownElement } from '#document/part-schema.ts';
import { DisjointSets } from './disjoint-sets.ts';
import { joinParts, joinsItsEnds, numberMetals } from './points.ts';
import { terminalKey } from './terminal-key.ts';
import type { Study } from './types.ts';

export type SwitchPosition = 'open' | 'closed';

export interface SwitchedNets {
  /** The node of a terminal, by its key; undefined where it is missing. */
  readonly nodeAt: (key: string) => number | undefined;
  /** The node of a unit's metal. */
  readonly metalOf: (unit: string) => number | undefined;
  readonly chassis: number;
  readonly hasSwitch: boolean;
}

const known = new WeakMap<
  Study['netOf'],
  { readonly parts: unknown; readonly nets: Readonly<Record<SwitchPosition, SwitchedNets>> }
>();

/** The nets with all switches open or closed. Kept as long as nothing is connected otherwise. */
export function switchNets(study: Study, position: SwitchPosition): SwitchedNets {
  const before = known.get(study.netOf);
  if (before?.parts === study.document.parts) return before.nets[position];
  const nets = { open: build(study, 'open'), closed: build(study, 'closed') };
  known.set(study.netOf, { parts: study.document.parts, nets });
  return nets[position];
}

function build({ document, index }: Study, position: SwitchPosition): SwitchedNets {
  const { terminals, terminalByKey, parts, wires } = index;
  const metals = numberMetals(document.units, terminals.length);
  const sets = new DisjointSets(metals.size);
  joinParts(index, metals, sets, ({ what, closed }) => closed && what !== 'switch');
  let hasSwitch = false;
  for (const part of parts) {
    for (const element of Object.values(part.elements ?? {})) {
      if (!isKnownElement(element) || element.kind !== 'link' || element.what !== 'switch')
        continue;
      hasSwitch = true;
      const from = terminalByKey.get(terminalKey(part.id, element.from))?.number;
      const to =
        element.to === undefined
          ? metals.of(part.unit)
          : terminalByKey.get(terminalKey(part.id, element.to))?.number;
      if (position === 'closed' && from !== undefined && to !== undefined) sets.join(from, to);
    }
  }
  for (const wire of wires) {
    const [from, to] = [index.findAt(wire.from), index.findAt(wire.to)];
    if (from && to && joinsItsEnds(wire)) sets.join(from.number, to.number);
  }
  return {
    nodeAt: (key) => {
      const number = terminalByKey.get(key)?.number;
      return number === undefined ? undefined : sets.rootOf(number);
    },
    metalOf: (unit) => {
      const point = metals.of(unit);
      return point === undefined ? undefined : sets.rootOf(point);
    },
    chassis: sets.rootOf(metals.chassis),
    hasSwitch
  };
}
