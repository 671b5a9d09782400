// A part of the stress is missing: the class that is shown is a lower bound.
import type { Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { classReasoning } from '../class-reasoning.ts';
import type { Finding, Rule } from '../finding.ts';
import { groupByNet } from '../group-by-net.ts';
import { wirePlace } from '../places.ts';
import { carriesWords, classWords, commonPractice, listed, wiresAsSubject } from '../words.ts';

export const stressPartial: Rule = {
  id: 'stress-partial',
  severity: 'caution',
  title: 'Wires of which a part of the stress is missing',
  source: commonPractice,
  explain:
    'Once the dc of a wire is known, ac and pulse that nobody declared count as none, unless its function or the part it ends at leads one to expect them: sweep circuits and yokes a pulse, heaters, the power line and plates an alternating part. Where the ac alone is known, the dc that it rides on is missing, save on the power line. Volts that are reckoned past something nobody described are a lower bound as well. A missing pulse is a caution, any other part a note. It passes once the part is declared, with 0 where there is none.',
  check: (study) => {
    const partial = study.index.wires.filter((wire) => study.wires.get(wire.id)?.stress?.atLeast);
    return groupByNet(study, partial).map((wires) => findingOf(study, wires));
  }
};

function findingOf(study: Study, wires: readonly Wire[]): Finding {
  const studies = wires
    .map((wire) => study.wires.get(wire.id))
    .filter((about) => about !== undefined);
  const worst = studies.reduce((a, b) =>
    (b.need?.requiredV ?? 0) > (a.need?.requiredV ?? 0) ? b : a
  );
  const missing = [...new Set(studies.flatMap((about) => about.stress?.missing ?? []))];
  const lacksPulse = missing.some((part) => part.startsWith('the pulse'));
  const one = wires.length === 1;
  const need = worst.need ? ` ${one ? 'It needs' : 'They need'} ${classWords(worst.need)}.` : '';
  return {
    rule: 'stress-partial',
    severity: lacksPulse ? 'caution' : 'note',
    at: wires.map((wire) => wirePlace(study, wire)),
    message: `${wiresAsSubject(study, wires)} ${one ? 'carries' : 'carry'} ${carriesWords(worst)}: ${listed(missing)} ${missing.length === 1 ? 'is' : 'are'} not known.${need}`,
    source: commonPractice,
    fix: { words: wayOut(missing) },
    why: classReasoning(study, worst, null)
  };
}

/** What can be declared, and where a reckoned figure is in doubt, its dc. */
function wayOut(missing: readonly string[]): string {
  const toDeclare = missing.filter((part) => !part.startsWith('what ')).map(withoutReason);
  return toDeclare.length === missing.length
    ? `Declare ${listed(toDeclare)}, 0 where there is none.`
    : `Declare ${listed(['its dc from a measurement', ...toDeclare])}, or describe what is connected there.`;
}

/** "the pulse (sweep circuit)" without the reason. */
const withoutReason = (part: string): string => part.replace(/ \(.*\)$/, '');
