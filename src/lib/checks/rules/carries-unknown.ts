// Nothing is known of the volts on a wire: its class is not known either.
import type { Wire } from '#document/index.ts';
import { formatVolts } from '#quantity/index.ts';
import type { FunctionRole } from '#study/function-words.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { groupByNet } from '../group-by-net.ts';
import { wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject } from '../words.ts';

export const carriesUnknown: Rule = {
  id: 'carries-unknown',
  severity: 'caution',
  title: 'Wires of which nobody knows what they carry',
  source: commonPractice,
  explain:
    'A wire has no known volts when it declares none, no wire that is connected to it declares any, and no source, winding or heater of a part tells. Its class is then not known, which is not a low class: nothing is proposed for it below the highest rail of its unit, below the highest pulse there unless its function says that no pulse gets to it, and below the highest class in its cable. One finding for each set of connected points. It passes once one of the wires declares its volts, measured or from the service data. Leads of grids and signals are a note.',
  check: (study) => {
    const unknown = study.index.wires.filter((wire) => study.wires.get(wire.id)?.stress === null);
    return groupByNet(study, unknown).map((wires) => findingOf(study, wires));
  }
};

const lowLevel: readonly FunctionRole[] = ['grid', 'signal', 'audio'];

function findingOf(study: Study, wires: readonly Wire[]): Finding {
  const about = wires.map((wire) => study.wires.get(wire.id));
  const net = study.nets.get(about[0]?.net ?? '');
  const isSmall = lowLevel.some((role) => net?.roles.has(role) === true);
  const where = net && wires.length > 1 ? `, joined at ${net.name},` : '';
  const one = wires.length === 1;
  const missing = about[0]?.carries;
  const partly =
    missing && (missing.dcV ?? missing.acV ?? missing.pulseV) !== null
      ? 'what is known of it is nought, and the rest is missing'
      : `nothing is known of what ${one ? 'it carries' : 'they carry'}`;
  const rail = about.find((each) => each?.recommended)?.recommended;
  const proposal = rail
    ? ` Until it is, propose nothing below the ${formatVolts(rail.classV)} class (${rail.classBasis}).`
    : '';
  return {
    rule: 'carries-unknown',
    severity: isSmall ? 'note' : 'caution',
    at: wires.map((wire) => wirePlace(study, wire)),
    message: `${wiresAsSubject(study, wires)}${where}: ${partly}, so ${one ? 'its' : 'their'} class is not known.${proposal}`,
    source: commonPractice,
    fix: {
      words: one
        ? 'Declare its volts, measured or from the service data.'
        : 'Declare the volts on one of them; the others follow.'
    }
  };
}
