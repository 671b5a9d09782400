// Which side of a part a terminal belongs to by what it does: signal in from the west, out to the
// east, supply above, heater and chassis below. What a tube's pins do is the handbook's to say; for
// the rest the connected points tell.
import type { Part, Terminal } from '#document/index.ts';
import { findTubeType, type PinRole } from '#handbook/index.ts';
import type { Study } from '#study/index.ts';
import { terminalKey } from '#study/terminal-key.ts';
import type { Side } from './sides.ts';

const sideByRole: Readonly<Partial<Record<PinRole, Side>>> = {
  heater: 'south',
  'heater tap': 'south',
  filament: 'south',
  cathode: 'south',
  suppressor: 'south',
  'internal shield': 'south',
  shell: 'south',
  'control grid': 'west',
  'oscillator grid': 'west',
  'signal grid': 'west',
  'quadrature grid': 'west',
  'diode plate': 'west',
  plate: 'east',
  'oscillator plate': 'east',
  target: 'east',
  'screen grid': 'north'
};

const isHeaterTerminal = (part: Part, terminal: Terminal): boolean =>
  Object.values(part.elements ?? {}).some(
    ({ kind, from, to }) => kind === 'heater' && (from === terminal.id || to === terminal.id)
  );

/** What a line on these connected points is, for the looks of the drawing. */
export type LineRole = 'supply' | 'heater' | 'chassis' | 'signal';

const heaterWords = /heater|filament/i;

/** The role of each of the connected points; found once for a drawing. */
export const buildNetRoles = (study: Study): ReadonlyMap<string, LineRole> => {
  const roles = new Map<string, LineRole>();
  const heaterWires = new Set(
    study.index.wires.filter((wire) => heaterWords.test(wire.function ?? '')).map(({ id }) => id)
  );
  for (const net of study.nets.values()) {
    const isHeater = heaterWords.test(net.name) || net.wires.some((wire) => heaterWires.has(wire));
    roles.set(
      net.id,
      net.isChassis ? 'chassis' : isHeater ? 'heater' : net.isSupply ? 'supply' : 'signal'
    );
  }
  return roles;
};

const sideByLine: Readonly<Partial<Record<LineRole, Side>>> = {
  supply: 'north',
  heater: 'south',
  chassis: 'south'
};

/** The side that a terminal belongs to, or null where nothing speaks for one. */
export const sideOfTerminal = (
  study: Study,
  roles: ReadonlyMap<string, LineRole>,
  part: Part,
  terminal: Terminal
): Side | null => {
  if (isHeaterTerminal(part, terminal)) return 'south';
  const net = study.netOf.get(terminalKey(part.id, terminal.id));
  const byLine = sideByLine[(net === undefined ? undefined : roles.get(net)) ?? 'signal'];
  if (byLine) return byLine;
  if (part.kind !== 'tube' || part.type === undefined) return null;
  const tube = findTubeType(part.type);
  const pin = tube?.pinFunctions.find((one) => one.pin === terminal.name);
  return (pin && sideByRole[pin.role]) ?? null;
};
