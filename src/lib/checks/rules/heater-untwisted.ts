// Heater leads of two wires that are not twisted, beside audio of low level.
import type { Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { isLowLevelAudio } from '../low-level.ts';
import { wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject, wiresInWords } from '../words.ts';

export const heaterUntwisted: Rule = {
  id: 'heater-untwisted',
  severity: 'note',
  title: 'Heater pairs beside audio that are not twisted',
  source: commonPractice,
  explain:
    'Where heaters are fed by two wires, neither of them on the chassis, the two are twisted so that their fields cancel. Looked at are such leads that share a support or a stretch with a lead of low-level audio and of which neither the dress nor the cable says that they are twisted. Heaters with a chassis return, and series strings, have nothing to be twisted with. It passes with a dress note such as "twisted with 12", or away from the audio lead.',
  check: (study) => {
    const audio = new Set(
      study.index.wires.filter((wire) => isLowLevelAudio(study, wire)).map(({ id }) => id)
    );
    if (audio.size === 0) return [];
    return study.index.wires
      .filter((wire) => isLooseHeaterLead(study, wire))
      .flatMap((wire) => checkWire(study, wire, audio));
  }
};

function isLooseHeaterLead(study: Study, wire: Wire): boolean {
  const about = study.wires.get(wire.id);
  const net = study.nets.get(about?.net ?? '');
  if (!net?.atHeater || net.isChassis || net.standsOnRail) return false;
  if (/twist/i.test(wire.dress ?? '') || /twist/i.test(cableWords(study, wire))) return false;
  return isPair(study, net.id);
}

/** Two wires feed the heaters when every heater on the net has its other side on one other net that is
 *  not the chassis, and there are no heaters in series beyond it. */
function isPair(study: Study, netId: string): boolean {
  const others = new Set<string>();
  for (const { values, from, to } of study.elements) {
    if (values.kind !== 'heater') continue;
    if (from.id === netId) others.add(to.id);
    else if (to.id === netId) others.add(from.id);
  }
  const [other] = others;
  if (others.size !== 1 || other === undefined) return false;
  if (study.nets.get(other)?.isChassis !== false) return false;
  return study.elements.every(
    ({ values, from, to }) =>
      values.kind !== 'heater' ||
      (from.id !== other && to.id !== other) ||
      from.id === netId ||
      to.id === netId
  );
}

function cableWords(study: Study, { cable }: Wire): string {
  const found = cable === undefined ? undefined : findElement(study.document.cables, cable);
  return found ? `${found.name} ${found.kind} ${found.notes ?? ''}` : '';
}

function checkWire(study: Study, wire: Wire, audio: ReadonlySet<string>): Finding[] {
  const bundles = (study.bundlesOf.get(wire.id) ?? []).filter(({ cable }) => cable === null);
  const near = study.index.wires.filter(
    ({ id }) => audio.has(id) && bundles.some(({ wires }) => wires.includes(id))
  );
  if (near.length === 0) return [];
  return [
    {
      rule: 'heater-untwisted',
      severity: 'note',
      at: [wirePlace(study, wire), ...near.map((other) => wirePlace(study, other))],
      message: `${wiresAsSubject(study, [wire])} is one of two heater leads and runs beside ${wiresInWords(study, near)}, low-level audio; nothing says that the two are twisted.`,
      source: commonPractice,
      fix: {
        words:
          'Twist the two heater leads, press them against the deck, and write it down as their dress.'
      }
    }
  ];
}
