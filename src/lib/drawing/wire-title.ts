// A wire in one line: for a pointer that rests on it, and for those who cannot see it.
import type { Id } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { Study } from '#study/index.ts';

const volts = (value: number): string => (value < 1000 ? `${value} V` : `${value / 1000} kV`);

/** "Wire 60, V10-2 to V11 anode, needs at least 25 kV, second anode, white". */
export const wireTitle = (study: Study, id: Id): string => {
  const wire = findElement(study.document.wires, id);
  if (!wire) return '';
  const need = study.wires.get(id)?.need ?? null;
  const { labelOf } = study.index;
  const colour = [wire.found.colour, wire.found.tracer].filter(Boolean).join('/');
  return [
    wire.number === '' ? 'Wire without a number' : `Wire ${wire.number}`,
    `${labelOf(wire.from)} to ${labelOf(wire.to)}`,
    need ? `needs ${need.atLeast ? 'at least ' : ''}${volts(need.requiredV)}` : 'class not known',
    wire.function ?? '',
    colour
  ]
    .filter((text) => text !== '')
    .join(', ');
};
