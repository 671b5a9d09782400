// More leads were counted at a terminal than were recorded: something is not accounted for.
import type { Study, TerminalEntry } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachTerminal, inPieces } from '../pieces.ts';
import { terminalPlace } from '../places.ts';
import { commonPractice } from '../words.ts';

export const leadsMissing: Rule = {
  id: 'leads-missing',
  severity: 'caution',
  title: 'Leads that were counted and not recorded',
  source: commonPractice,
  explain:
    'Where somebody counted the leads at a terminal, wires and leads of components alike, as many should be recorded there. Fewer recorded than counted is a caution: a wire or a part has been overlooked. More recorded than counted is a note: a slip in either. It passes when the two agree.',
  ...inPieces(eachTerminal(checkTerminal))
};

function checkTerminal(study: Study, entry: TerminalEntry): Finding[] {
  const counted = entry.terminal.leadsCounted;
  if (counted === undefined) return [];
  const wires = study.index.wiresAt.get(entry.key) ?? [];
  // A wire with both ends on one terminal is two leads there.
  const ends = wires
    .flatMap((wire) => [wire.from, wire.to])
    .filter((end) => study.index.findAt(end) === entry);
  const recorded = ends.length + (study.index.leadsOn.get(entry.key)?.length ?? 0);
  if (recorded === counted) return [];
  const place = terminalPlace(study, entry);
  const missing = counted - recorded;
  return [
    {
      rule: 'leads-missing',
      severity: missing > 0 ? 'caution' : 'note',
      at: [place],
      message: `${counted} ${counted === 1 ? 'lead was' : 'leads were'} counted at ${place.label}, but ${recorded} ${recorded === 1 ? 'is' : 'are'} recorded: ${Math.abs(missing)} too ${missing > 0 ? 'few' : 'many'}.`,
      source: commonPractice,
      fix: { words: missing > 0 ? 'Look what else is on that terminal.' : 'Count again.' }
    }
  ];
}
