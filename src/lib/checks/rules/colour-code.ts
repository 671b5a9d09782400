// The planned colour says another function than the wire has, by the chassis wiring code.
import type { Wire } from '#document/index.ts';
import {
  chassisColourOf,
  chassisColours,
  findCircuitFunction,
  type ChassisColour
} from '#handbook/colour-code.ts';
import { parseColour } from '#handbook/colours.ts';
import type { Net, Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { wiresAsSubject } from '../words.ts';

const source = chassisColourOf('ground').source;

export const colourCode: Rule = {
  id: 'colour-code',
  severity: 'note',
  title: 'Planned colours that mean something else',
  source,
  explain:
    'The chassis wiring code gives each function a colour: black grounds, brown heaters, red B+, orange screens, yellow cathodes, green control grids, blue plates, violet B minus, gray the power line, white all else. Makers differed, so only new wire is looked at, only where its function is known and its colour is the one that the code has for another function, and never where it repeats the colour that was found. It is a note and no more. It passes with the colour of the code, or with the one that was found.',
  ...inPieces(eachWire(checkWire))
};

function checkWire(study: Study, wire: Wire): Finding[] {
  const { colour } = wire.planned;
  if (colour === undefined || wire.planned.way === 'keep') return [];
  const planned = parseColour(colour)?.colour;
  if (planned === undefined) return [];
  const found = wire.found.colour === undefined ? null : parseColour(wire.found.colour);
  if (found?.colour === planned) return [];
  const meant = meaningOf(wire, study.nets.get(study.wires.get(wire.id)?.net ?? ''));
  const said = chassisColours.find((row) => row.colour === planned);
  if (!meant || !said || said.circuit === meant.circuit || said.circuit === 'other') return [];
  return [
    {
      rule: 'colour-code',
      severity: 'note',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} is planned in ${planned}, which the code gives to ${said.words}; for ${meant.words} it has ${meant.colour}.`,
      source,
      fix: {
        words: `Plan it in ${meant.colour}.`,
        edit: {
          kind: 'change-wire',
          args: { id: wire.id, fields: { planned: { colour: meant.colour } } }
        }
      }
    }
  ];
}

/** The code's row for what the wire does: its own words first, then what it is connected to. */
function meaningOf(wire: Wire, net: Net | undefined): ChassisColour | null {
  if (net?.isChassis) return chassisColourOf('ground');
  const own = wire.function === undefined ? null : findCircuitFunction(wire.function);
  // Who writes "ground" or "heater" may mean either side of it.
  if (own !== null && own !== 'ground') return chassisColourOf(own);
  return net?.isSupply === true && (net.dcV?.value ?? 0) > 0
    ? chassisColourOf('supply plus')
    : null;
}
