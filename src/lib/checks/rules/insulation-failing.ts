// Insulation that somebody wrote down as failing, on a wire for which nothing new is planned.
import type { Edit, Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { cautionAtVolts } from '../cautions.ts';
import type { Finding, Rule, Severity } from '../finding.ts';
import { readsAsFailing } from '../condition.ts';
import { wireLabel, wirePlace } from '../places.ts';
import { highVoltageV, isFoundInPlace } from '../shortfall.ts';
import { carriesWords, commonPractice, listed, wiresAsSubject } from '../words.ts';
import { planClass } from './class-found.ts';

export const insulationFailing: Rule = {
  id: 'insulation-failing',
  severity: 'danger',
  title: 'Failing insulation with nothing new planned',
  source: commonPractice,
  explain:
    'Reads the condition that was written down: brittle, cracked, crumbling, frayed, burnt, melted, stiff, taped, bare in places and the like. A rating that such insulation once had counts for nothing. From 1 kV it is a danger of its own. Others are gathered: a fault where they carry more than 60 V or nobody knows what, otherwise a caution. It passes once new wire or a new sleeve is planned, or the wire is out.',
  check: (study) => {
    const failing = study.index.wires.filter((wire) => isFailing(wire));
    const bySeverity = new Map<Severity, Wire[]>();
    const own: Finding[] = [];
    for (const wire of failing) {
      const severity = severityOf(study, wire);
      if (severity === 'danger') own.push(dangerOf(study, wire));
      else bySeverity.set(severity, [...(bySeverity.get(severity) ?? []), wire]);
    }
    const together = [...bySeverity].map(([severity, wires]) => togetherOf(study, severity, wires));
    return [...own, ...together];
  }
};

function isFailing(wire: Wire): boolean {
  const { condition } = wire.found;
  if (condition === undefined || !isFoundInPlace(wire) || !readsAsFailing(condition)) return false;
  return wire.planned.way === undefined || wire.planned.way === 'keep';
}

const touchV = 60;

function severityOf(study: Study, wire: Wire): Severity {
  const stress = study.wires.get(wire.id)?.stress;
  if (!stress) return 'fault';
  if (stress.volts >= highVoltageV) return 'danger';
  return stress.volts > touchV || stress.atLeast ? 'fault' : 'caution';
}

function dangerOf(study: Study, wire: Wire): Finding {
  const about = study.wires.get(wire.id);
  const fix = about && wire.isPart === undefined ? planClass(wire, about) : undefined;
  return {
    rule: 'insulation-failing',
    severity: 'danger',
    at: [wirePlace(study, wire)],
    message: `The insulation of ${wireLabel(study, wire)} is failing (${wire.found.condition ?? ''}), and it carries ${about ? carriesWords(about) : ''}.`,
    source: commonPractice,
    fix: fix ?? { words: 'Plan new wire or a new sleeve for it.' },
    caution: cautionAtVolts(about?.stress?.volts ?? highVoltageV)
  };
}

function togetherOf(study: Study, severity: Severity, wires: readonly Wire[]): Finding {
  const conditions = [...new Set(wires.map((wire) => wire.found.condition ?? ''))];
  const plans = wires.flatMap((wire) => {
    const about = study.wires.get(wire.id);
    const plan = about && wire.isPart === undefined ? planClass(wire, about) : undefined;
    return plan ? [plan.edit] : [];
  });
  const edit: Edit = { kind: 'do-many', args: { name: 'Plan new wire', edits: plans } };
  const one = wires.length === 1;
  return {
    rule: 'insulation-failing',
    severity,
    at: wires.map((wire) => wirePlace(study, wire)),
    message: `${wiresAsSubject(study, wires)} ${one ? 'has' : 'have'} failing insulation (${listed(conditions, 5)}), and nothing new is planned for ${one ? 'it' : 'them'}.`,
    source: commonPractice,
    fix:
      plans.length > 0
        ? {
            words: `Plan new wire of the class needed for ${one ? 'it' : `the ${plans.length} of which the class is known`}.`,
            edit
          }
        : { words: 'Plan new wire or a new sleeve once it is known what they carry.' }
  };
}
