// Undo and redo as plain data: each step keeps the edit, what it did to the document and what takes it
// back. Steps that follow each other closely and change the same thing are one step, so that a drag or a
// retyped cell is undone at once. The clock comes in as an argument.
import type { EditApplied } from './apply-edit.ts';
import { compactPatches } from './compact-patches.ts';
import type { Edit } from './edit.ts';
import { joinFields } from './merge-fields.ts';
import { applyPatches, type Patch } from './patch.ts';
import { isRecord } from './plain-json.ts';
import type { ChassisDocument } from './schema.ts';

export interface HistoryStep {
  readonly name: string;
  readonly edit: Edit;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
  /** Steps with the same key may become one; null stays alone. */
  readonly mergeKey: string | null;
  /** Of its last edit, in milliseconds. */
  readonly time: number;
}

export interface History {
  /** Oldest first: the last one is undone next. */
  readonly past: readonly HistoryStep[];
  /** The first one is redone next. */
  readonly future: readonly HistoryStep[];
}

export const emptyHistory: History = { past: [], future: [] };

/** Milliseconds between two edits of the same thing that still make one step. */
export const mergeWindowMs = 1000;

const leavesOf = (fields: object): string[] =>
  Object.entries(fields).flatMap(([key, value]) =>
    isRecord(value) ? leavesOf(value).map((leaf) => `${key}.${leaf}`) : [key]
  );

/** What an edit changes, as text: edits with the same key may be one step of undo. Null where the
 *  edit adds or removes something. */
export const mergeKeyOf = (edit: Edit): string | null => {
  if (edit.kind === 'do-many') {
    const keys = edit.args.edits.map(mergeKeyOf);
    return keys.length === 0 || keys.includes(null) ? null : keys.join(' + ');
  }
  if (!('fields' in edit.args)) return null;
  const id = 'id' in edit.args ? edit.args.id : '';
  return `${edit.kind} ${id} ${leavesOf(edit.args.fields).sort().join(' ')}`;
};

/** What a change is made to, or null where it may reach further than one element. */
const targetOf = (edit: Edit): string | null => {
  if (edit.kind === 'do-many' || !('fields' in edit.args)) return null;
  if (edit.kind === 'change-part' && 'terminals' in edit.args.fields) return null;
  return 'id' in edit.args ? `${edit.kind} ${edit.args.id}` : edit.kind;
};

/** One edit for two changes of the same element. */
const joinChanges = (first: Edit, second: Edit): Edit | undefined => {
  const target = targetOf(first);
  if (target === null || target !== targetOf(second)) return undefined;
  if (!('fields' in first.args && 'fields' in second.args)) return undefined;
  const fields = joinFields(first.args.fields, second.args.fields);
  return fields && ({ kind: first.kind, args: { ...first.args, fields } } as Edit);
};

/** One edit for two that change the same elements, each of them once. */
const joinManies = (first: readonly Edit[], second: readonly Edit[]): Edit[] | undefined => {
  const isOnceEach = new Set(first.map(targetOf)).size === first.length;
  if (!isOnceEach || first.length !== second.length) return undefined;
  const joined: Edit[] = [];
  for (const [index, edit] of first.entries()) {
    const next = second[index];
    const both = next && joinChanges(edit, next);
    if (!both) return undefined;
    joined.push(both);
  }
  return joined;
};

const stepsOf = (edit: Edit): readonly Edit[] =>
  edit.kind === 'do-many' ? edit.args.edits : [edit];

/** The edit that does what two do one after the other. */
const joinEdits = (first: Edit, second: Edit, name: string): Edit => {
  const edits =
    first.kind === 'do-many' && second.kind === 'do-many'
      ? joinManies(first.args.edits, second.args.edits)
      : undefined;
  if (edits) return { kind: 'do-many', args: { name, edits } };
  return (
    joinChanges(first, second) ?? {
      kind: 'do-many',
      args: { name, edits: [...stepsOf(first), ...stepsOf(second)] }
    }
  );
};

/** The history with an edit that was applied. A new edit takes away what could be redone; one that
 *  changed nothing leaves the history as it is.
 *  @param time in milliseconds, from a clock that does not run backwards.
 *  @param mergeKey null to keep the step apart from the one before. */
export const pushEdit = (
  history: History,
  edit: Edit,
  applied: EditApplied,
  time: number,
  mergeKey: string | null = mergeKeyOf(edit)
): History => {
  if (applied.patches.length === 0) return history;
  const { name, patches, inverse } = applied;
  const step: HistoryStep = { name, edit, patches, inverse, mergeKey, time };
  const last = history.past.at(-1);
  const isOneStep =
    last !== undefined &&
    history.future.length === 0 &&
    mergeKey !== null &&
    last.mergeKey === mergeKey &&
    time >= last.time &&
    time - last.time <= mergeWindowMs;
  if (!isOneStep) return { past: [...history.past, step], future: [] };
  const joined: HistoryStep = {
    ...step,
    edit: joinEdits(last.edit, edit, name),
    patches: compactPatches([...last.patches, ...patches]),
    inverse: compactPatches([...inverse, ...last.inverse])
  };
  return { past: [...history.past.slice(0, -1), joined], future: [] };
};

/** Ends the last step: what follows is a step of its own, as when the mouse button is let go. */
export const sealHistory = (history: History): History => {
  const last = history.past.at(-1);
  if (!last || last.mergeKey === null) return history;
  return { ...history, past: [...history.past.slice(0, -1), { ...last, mergeKey: null }] };
};

export interface Step {
  readonly document: ChassisDocument;
  readonly history: History;
  /** What was undone or redone, in words. */
  readonly name: string;
}

/** One step back, or undefined where there is none. `document` must be the one that the history led to. */
export const undo = (document: ChassisDocument, history: History): Step | undefined => {
  const last = history.past.at(-1);
  if (!last) return undefined;
  return {
    document: applyPatches(document, last.inverse),
    history: { past: history.past.slice(0, -1), future: [last, ...history.future] },
    name: last.name
  };
};

/** One step forward again, or undefined where nothing was undone. */
export const redo = (document: ChassisDocument, history: History): Step | undefined => {
  const [next, ...future] = history.future;
  if (!next) return undefined;
  return {
    document: applyPatches(document, next.patches),
    history: { past: [...history.past, next], future },
    name: next.name
  };
};
