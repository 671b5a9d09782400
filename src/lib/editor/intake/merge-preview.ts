// What a second list would do to the open chassis, in words: of each wire that changes, every field as it
// is and as it would be.
import { applyEdit, type ChassisDocument } from '#document/index.ts';
import { mergeEdit, type ListMerge, type MergedWire } from '#intake/index.ts';
import { buildStudy, type Study } from '#study/index.ts';
import type { LengthUnit } from '../core/preferences.svelte.ts';
import { columnList } from '../schedule/columns.ts';

export interface FieldChange {
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

export interface PreviewedWire {
  readonly key: string;
  readonly number: string;
  /** "V1-2 to TS1-1", as it would be. */
  readonly run: string;
  readonly changes: readonly FieldChange[];
}

export interface MergePreview {
  readonly added: readonly PreviewedWire[];
  readonly changed: readonly PreviewedWire[];
  readonly same: number;
  readonly staying: number;
}

/** What a person's choice about a wire is kept under: it outlives another reading of the list. */
export const mergeKey = ({ kind, number, id }: MergedWire): string =>
  kind === 'changed' ? id : `${kind} ${number}`;

export interface MergeCounts {
  readonly added: number;
  readonly changed: number;
}

/** How many wires would come in, and how many would change. */
export const mergeCounts = ({ wires }: ListMerge, left: readonly string[]): MergeCounts => {
  const count = (wanted: MergedWire['kind']): number =>
    wires.filter((wire) => wire.kind === wanted && !left.includes(mergeKey(wire))).length;
  return { added: count('new'), changed: count('changed') };
};

const typedColumns = columnList.filter(({ read, id }) => read !== undefined || id === 'cable');

const changesOf = (
  id: string,
  before: Study,
  after: Study,
  lengthUnit: LengthUnit
): readonly FieldChange[] => {
  const sourceIn = (study: Study) => {
    const wire = study.document.wires[id];
    const about = study.wires.get(id);
    return wire && about ? { wire, about, study, lengthUnit } : null;
  };
  const [old, fresh] = [sourceIn(before), sourceIn(after)];
  if (!old || !fresh) return [];
  // "Carries" says in one what the columns for each kind of volts say apart.
  return typedColumns
    .filter(({ id: column }) => !['dc', 'ac', 'pulse', 'amps'].includes(column))
    .flatMap(({ title, toEdit, show }) => {
      const text = toEdit ?? show;
      const [was, is] = [text(old), text(fresh)];
      return was === is ? [] : [{ name: title, before: was, after: is }];
    });
};

/** @param open the chassis as it is, with its study */
export const previewMerge = (
  open: Study,
  merge: ListMerge,
  lengthUnit: LengthUnit
): MergePreview => {
  const edit = mergeEdit(merge, 'preview', () => true);
  const applied = edit === null ? null : applyEdit(open.document, edit);
  const document: ChassisDocument = applied?.ok === true ? applied.document : open.document;
  const after = document === open.document ? open : buildStudy(document);
  const previewOf = (wire: MergedWire): PreviewedWire => {
    const made = document.wires[wire.id];
    return {
      key: mergeKey(wire),
      number: wire.number,
      run:
        made === undefined
          ? ''
          : `${after.index.labelOf(made.from)} to ${after.index.labelOf(made.to)}`,
      changes: wire.kind === 'changed' ? changesOf(wire.id, open, after, lengthUnit) : []
    };
  };
  const of = (kind: MergedWire['kind']): readonly MergedWire[] =>
    merge.wires.filter((wire) => wire.kind === kind);
  return {
    added: of('new').map(previewOf),
    changed: of('changed').map(previewOf),
    same: of('same').length,
    staying: merge.staying.length
  };
};
