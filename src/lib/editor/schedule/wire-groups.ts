// Wires that belong together, so that something can be done to all of them at once: marked or found in the
// schedule, at what is picked, of one net, cable, class or colour, or named by one finding.
import { findRule, type Finding } from '#checks/index.ts';
import type { Wire } from '#document/index.ts';
import { classBandOf, type Study } from '#study/index.ts';
import { endKeysOf, type Pick } from '../core/pick.ts';
import { colourText, needText } from '../core/words.ts';

export interface WireGroup {
  readonly id: string;
  readonly name: string;
  /** In the order of the schedule. */
  readonly wires: readonly string[];
}

export interface GroupedFrom {
  readonly study: Study;
  readonly findings: readonly Finding[];
  readonly pick: Pick | null;
  /** Rows marked in the schedule, and rows in which its find found something. */
  readonly marked: readonly string[];
  readonly found: readonly string[];
}

const wiresOfNet = (study: Study, net: string | null | undefined): readonly string[] =>
  net === null || net === undefined ? [] : (study.nets.get(net)?.wires ?? []);

/** What a wire has in common with others. */
const kinOf = (wire: Wire, { study, findings }: GroupedFrom): readonly WireGroup[] => {
  const about = study.wires.get(wire.id);
  const all = study.index.wires;
  const cable = wire.cable === undefined ? undefined : study.document.cables[wire.cable];
  const colour = colourText(wire.found.colour, wire.found.tracer);
  const bandOf = (id: string) => classBandOf(study.wires.get(id)?.need?.requiredV ?? null);
  const like = (id: string, name: string, test: (other: Wire) => boolean): WireGroup => ({
    id,
    name,
    wires: all.filter(test).map((other) => other.id)
  });
  return [
    { id: 'net', name: 'connected with it', wires: wiresOfNet(study, about?.net) },
    ...(cable === undefined
      ? []
      : [like('cable', `in ${cable.name}`, (other) => other.cable === wire.cable)]),
    ...(colour === ''
      ? []
      : [like('colour', colour, ({ found }) => colourText(found.colour, found.tracer) === colour)]),
    like(
      'class',
      `of its class (${needText(about?.need ?? null)})`,
      (other) => bandOf(other.id) === bandOf(wire.id)
    ),
    ...findings
      .filter(({ at }) => at.some(({ kind, id }) => kind === 'wire' && id === wire.id))
      .map((finding, index) => {
        const named = new Set(
          findings
            .filter(({ rule }) => rule === finding.rule)
            .flatMap(({ at }) => at.filter(({ kind }) => kind === 'wire').map(({ id }) => id))
        );
        return like(
          `finding ${index}`,
          `with the same finding: ${findRule(finding.rule)?.title ?? finding.rule}`,
          ({ id }) => named.has(id)
        );
      })
  ];
};

const atPick = (pick: Pick, study: Study): readonly string[] =>
  study.index.wires
    .filter((wire) =>
      endKeysOf(wire).some((key) =>
        pick.kind === 'part' ? key.startsWith(`${pick.id}/`) : key === pick.id
      )
    )
    .map(({ id }) => id);

/** The groups that offer themselves now, each of two wires or more; at the end all wires. */
export const wireGroups = (from: GroupedFrom): readonly WireGroup[] => {
  const { study, pick, marked, found } = from;
  const wire = pick?.kind === 'wire' ? study.document.wires[pick.id] : undefined;
  const groups: readonly WireGroup[] = [
    { id: 'marked', name: 'marked in the schedule', wires: marked },
    { id: 'found', name: 'found in the schedule', wires: found },
    ...(pick === null || pick.kind === 'wire'
      ? []
      : [{ id: 'picked', name: 'at what is picked', wires: atPick(pick, study) }]),
    ...(wire === undefined ? [] : kinOf(wire, from)),
    { id: 'all', name: 'all wires', wires: study.index.wires.map(({ id }) => id) }
  ];
  const seen = new Set<string>();
  return groups.filter(({ name, wires }) => {
    if (wires.length < 2 || seen.has(name)) return false;
    seen.add(name);
    return true;
  });
};
