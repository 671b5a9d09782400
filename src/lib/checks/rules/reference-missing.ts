// The document refers to something that it does not hold, as merged or hand-written files may.
import type { ChassisDocument, Edit, Wire } from '#document/index.ts';
import {
  findDanglingReferences,
  findElement,
  type DanglingReference
} from '#document/references.ts';
import type { Study } from '#study/index.ts';
import type { Finding, FindingPlace, Rule } from '../finding.ts';
import { eachWire, inPieces, wholeChassis } from '../pieces.ts';
import { documentPlace, partPlace, wirePlace } from '../places.ts';
import { capitalised, listed } from '../words.ts';

const source = 'the document itself';

export const referenceMissing: Rule = {
  id: 'reference-missing',
  severity: 'fault',
  title: 'References to what is not in the document',
  source,
  explain:
    'Ends, leads, units, cables, supports and what a photo or a callout shows are named by their ids. Where the named thing is missing the reference is kept and left out of every sum. The fix takes it away where that loses nothing else: the end of a wire becomes one that nobody has found. It passes when what is named is there again, or is named no more.',
  ...inPieces(
    wholeChassis(
      (study) => findingsOf(study, { ...study.document, wires: {} }),
      ({ document: { units, parts, cables, supports, photos, callouts } }) => [
        units,
        parts,
        cables,
        supports,
        photos,
        callouts
      ]
    ),
    eachWire((study, wire) =>
      isWhole(study, wire)
        ? []
        : findingsOf(study, { ...study.document, wires: { [wire.id]: wire } }, 'wire')
    )
  )
};

/** Nothing that the wire names is missing. */
function isWhole({ document, index }: Study, { from, to, cable, route }: Wire): boolean {
  if ((from.at && !index.findAt(from)) || (to.at && !index.findAt(to))) return false;
  if (cable !== undefined && !findElement(document.cables, cable)) return false;
  return (route?.supports ?? []).every((id) => findElement(document.supports, id) !== undefined);
}

/** One finding for each element of a document, or for its wires alone, that names what is missing. */
function findingsOf(study: Study, document: ChassisDocument, kind?: 'wire'): Finding[] {
  const byOwner = new Map<string, DanglingReference[]>();
  for (const reference of findDanglingReferences(document)) {
    if (kind !== undefined && reference.from.kind !== kind) continue;
    const owner = `${reference.from.kind} ${reference.from.id}`;
    const known = byOwner.get(owner);
    if (known) known.push(reference);
    else byOwner.set(owner, [reference]);
  }
  return [...byOwner.values()].map((references) => findingOf(study, references));
}

function findingOf(study: Study, references: readonly DanglingReference[]): Finding {
  const [first] = references;
  const edits = references.map(takeAway).filter((edit) => edit !== null);
  const isWhole = edits.length === references.length;
  const edit: Edit = { kind: 'do-many', args: { name: 'Take away references to nothing', edits } };
  return {
    rule: 'reference-missing',
    severity: 'fault',
    at: first ? [placeOf(study, first)] : [documentPlace(study)],
    message: `${capitalised(
      listed(
        references.map(({ words }) => words),
        4
      )
    )}.`,
    source,
    fix: isWhole
      ? { words: 'Take the reference away.', edit }
      : { words: 'Put back what is missing, or name another in its place.' }
  };
}

function placeOf(study: Study, { from }: DanglingReference): FindingPlace {
  const wire = study.index.wires.find(({ id }) => from.kind === 'wire' && id === from.id);
  if (wire) return wirePlace(study, wire);
  const part = from.kind === 'part' ? study.index.partById.get(from.id) : undefined;
  return part ? partPlace(part) : documentPlace(study);
}

/** The edit that drops one reference, where that is all it takes. */
function takeAway({ from, path }: DanglingReference): Edit | null {
  const [field] = path;
  if (from.kind === 'wire' && (field === 'from' || field === 'to')) {
    const end: Partial<Record<keyof Wire['from'], unknown>> = { at: null, known: 'unknown' };
    return { kind: 'change-wire', args: { id: from.id, fields: { [field]: end } } };
  }
  if (from.kind === 'wire' && field === 'cable') {
    return { kind: 'change-wire', args: { id: from.id, fields: { cable: null } } };
  }
  if (from.kind === 'part' && field === 'mates') {
    return { kind: 'change-part', args: { id: from.id, fields: { mates: null } } };
  }
  return null;
}
