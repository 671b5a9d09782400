// The parts that a set has by the dozen, with their terminals where they really are.
import type { ChassisBuilder } from '../helpers/chassis.ts';
import type { ElementSpec, PartOptions, TerminalSpec } from '../helpers/chassis-options.ts';
import { circleOffsets, rowOffsets, type Spot } from '../helpers/chassis-places.ts';

/** A winding or a coil as its dc resistance. */
export const winding = (from: string, to: string, ohms: number): ElementSpec => ({
  kind: 'resistor',
  from,
  to,
  ohms
});

/** Direct current that a tube draws from one electrode to its cathode. */
export const draws = (from: string, to: string, milliamps: number): ElementSpec => ({
  kind: 'load',
  from,
  to,
  amps: milliamps / 1000
});

export const acSource = (from: string, to: string, volts: number): ElementSpec => ({
  kind: 'source',
  current: 'ac',
  from,
  to,
  volts
});

/** Leads that leave a transformer along one edge, 9 mm apart. */
export const leads = (names: readonly string[], y: number): TerminalSpec[] =>
  rowOffsets(names.length, 9).map((offset, index) => ({
    name: names[index] ?? '',
    offset: [offset[0], y],
    ending: 'pigtail'
  }));

/** Lugs at given places. */
export const lugs = (
  places: Readonly<Record<string, Spot>>,
  grounded: readonly string[] = []
): TerminalSpec[] =>
  Object.entries(places).map(([name, offset]) => ({
    name,
    offset,
    ending: 'solder lug',
    ...(grounded.includes(name) ? { grounded: true } : {})
  }));

/** The eight lugs of an octal socket or plug. */
export const octalLugs = (ending: string, grounded: readonly string[] = []): TerminalSpec[] =>
  circleOffsets(8, 17.5).map((offset, index) => {
    const name = String(index + 1);
    return { name, offset, ending, ...(grounded.includes(name) ? { grounded: true } : {}) };
  });

/** A tuned transformer in its can: 1 plate, 2 B+, 3 grid or detector, 4 return. Its B+ lead may be
 *  soldered straight to a socket. */
export const addTunedCan = (
  set: ChassisBuilder,
  reference: string,
  more: PartOptions & { grounded?: readonly string[]; leadTwoOn?: string }
): void => {
  const { grounded, leadTwoOn, ...rest } = more;
  const terminals = lugs({ '1': [-6, 6], '2': [-6, -6], '3': [6, 6], '4': [6, -6] }, grounded);
  set.part(
    'transformer',
    reference,
    terminals.map((terminal) =>
      terminal.name === '2' && leadTwoOn !== undefined
        ? { ...terminal, ending: 'lead', on: leadTwoOn }
        : terminal
    ),
    { elements: [winding('1', '2', 3), winding('3', '4', 3)], ...rest }
  );
};

/** A control with its three lugs: 1 low end, 2 arm, 3 high end; the arm in the middle. */
export const addControl = (
  set: ChassisBuilder,
  reference: string,
  ohms: number,
  more: PartOptions & { grounded?: readonly string[] }
): void => {
  const { grounded, ...rest } = more;
  set.part('control', reference, lugs({ '1': [-8, 8], '2': [0, 10], '3': [8, 8] }, grounded), {
    elements: [winding('1', '2', ohms / 2), winding('2', '3', ohms / 2)],
    ...rest
  });
};
