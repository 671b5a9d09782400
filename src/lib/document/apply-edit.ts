// Applies an edit to a document: the result is a new document with the patches that lead to it and back,
// or a word on why not. The given document is never changed.
import { create } from 'mutative';
import type * as z from 'zod';
import {
  collections,
  isElementName,
  sections,
  type Edit,
  type ElementName,
  type Fields,
  type SectionName
} from './edit.ts';
import { editInWords } from './edit-name.ts';
import { issueInWords } from './issue-words.ts';
import {
  letGoOfCable,
  letGoOfPart,
  letGoOfStock,
  letGoOfSupport,
  letGoOfTerminalsOf
} from './let-go.ts';
import { mergeFields } from './merge-fields.ts';
import { partSchema, unitSchema } from './part-schema.ts';
import type { Patch } from './patch.ts';
import { placeInElement } from './place-words.ts';
import { copyJson, isRecord, NotJson } from './plain-json.ts';
import { photoSchema } from './photo-schema.ts';
import { policySchema } from './policy-schema.ts';
import { proofSchema } from './proof-schema.ts';
import { findElement } from './references.ts';
import { documentVersion, identitySchema, type ChassisDocument } from './schema.ts';
import { calloutSchema, patternSchema, stockSchema } from './shelf-schema.ts';
import { cableSchema, supportSchema, wireSchema } from './wire-schema.ts';
import { WorkingCopy, type ElementOf } from './working-copy.ts';

export interface EditApplied {
  readonly ok: true;
  readonly document: ChassisDocument;
  /** From the document before to the one after. Empty where nothing changed. */
  readonly patches: readonly Patch[];
  /** And back. */
  readonly inverse: readonly Patch[];
  /** For the list of undo steps. */
  readonly name: string;
}
export interface EditRefusal {
  readonly ok: false;
  /** One sentence: what is wrong, where, and the way out. */
  readonly problem: string;
}
export type EditResult = EditApplied | EditRefusal;

class EditRefused extends Error {}

const refuse = (problem: string): never => {
  throw new EditRefused(problem);
};

const elementSchemas: Readonly<Record<ElementName, z.ZodType>> = {
  unit: unitSchema,
  part: partSchema,
  wire: wireSchema,
  cable: cableSchema,
  support: supportSchema,
  photo: photoSchema,
  pattern: patternSchema,
  callout: calloutSchema,
  stock: stockSchema
};
const sectionSchemas = {
  identity: identitySchema,
  policy: policySchema.partial(),
  proof: proofSchema
} as const;

const checkBySchema = (
  schema: z.ZodType,
  value: unknown,
  placeOf: (path: readonly PropertyKey[]) => string
): void => {
  const issue = schema.safeParse(value).error?.issues[0];
  const [words] = issue ? issueInWords(issue, value) : [];
  if (words) refuse(`${placeOf(words.path)} ${words.wrong}: ${words.wayOut}`);
};

type SectionEdit = Extract<Edit, { kind: `change-${SectionName}` }>;
const isSectionEdit = (edit: Edit): edit is SectionEdit =>
  sections.some((name) => edit.kind === `change-${name}`);
const sectionOf = ({ kind }: SectionEdit): SectionName =>
  kind.slice('change-'.length) as SectionName;

const perform = (work: WorkingCopy, before: ChassisDocument, edit: Edit): void => {
  if (edit.kind === 'do-many') {
    for (const inner of edit.args.edits) perform(work, before, checkedShape(inner));
    return;
  }
  if (isSectionEdit(edit)) {
    mergeFields(work.section(sectionOf(edit)), edit.args.fields);
    return;
  }
  const kind = edit.kind.slice(edit.kind.indexOf('-') + 1) as ElementName;
  if ('element' in edit.args) {
    const { element } = edit.args;
    if (work.has(kind, element.id)) {
      refuse(`there is a ${kind} ${element.id} already: give the new one another id`);
    }
    work.add(kind, element as ElementOf[typeof kind]);
    return;
  }
  const { id } = edit.args;
  if (!work.has(kind, id)) refuse(`there is no ${kind} ${id}: it may have been removed`);
  if ('fields' in edit.args) changeElement(work, before, kind, id, edit.args.fields);
  else removeElement(work, before, kind, id);
};

const changeElement = (
  work: WorkingCopy,
  before: ChassisDocument,
  kind: ElementName,
  id: string,
  fields: Fields
): void => {
  if (Object.hasOwn(fields, 'id') && fields['id'] !== id) {
    refuse(`the id of ${kind} ${id} cannot change: others refer to it`);
  }
  mergeFields(work.change(kind, id), fields);
  const terminals = kind === 'part' ? fields['terminals'] : undefined;
  if (!isRecord(terminals)) return;
  const gone = new Set(Object.keys(terminals).filter((key) => terminals[key] === null));
  if (gone.size > 0) letGoOfTerminalsOf(work, before, id, gone);
};

const removeElement = (
  work: WorkingCopy,
  before: ChassisDocument,
  kind: ElementName,
  id: string
): void => {
  work.remove(kind, id);
  if (kind === 'part') letGoOfPart(work, before, id);
  if (kind === 'cable') letGoOfCable(work, id);
  if (kind === 'support') letGoOfSupport(work, id);
  if (kind === 'stock') letGoOfStock(work, id);
};

const isText = (value: unknown): boolean => typeof value === 'string';
const hasId = (value: unknown): boolean => isRecord(value) && isText(value['id']);

/** What args each kind of edit has, and what each must be. */
const argsOf = (kind: string): Readonly<Record<string, (value: unknown) => boolean>> => {
  if (kind === 'do-many') return { name: isText, edits: Array.isArray };
  if (sections.some((name) => kind === `change-${name}`)) return { fields: isRecord };
  const [, verb = '', element = ''] = /^(add|change|remove)-(\w+)$/.exec(kind) ?? [];
  if (!isElementName(element)) return refuse(`there is no edit of the kind "${kind}"`);
  if (verb === 'add') return { element: hasId };
  return verb === 'change' ? { id: isText, fields: isRecord } : { id: isText };
};

/** An edit may come from a file: its shape is looked at before it is used. */
const checkedShape = (edit: Edit): Edit => {
  if (!isRecord(edit) || typeof edit.kind !== 'string' || !isRecord(edit.args)) {
    return refuse('an edit is an object with a kind and args');
  }
  const args: Readonly<Record<string, unknown>> = edit.args;
  const wanted = Object.entries(argsOf(edit.kind));
  const isSound =
    Object.keys(args).length === wanted.length && wanted.every(([key, is]) => is(args[key]));
  return isSound
    ? edit
    : refuse(`the args of ${edit.kind} are ${wanted.map(([key]) => key).join(' and ')}, no others`);
};

const checkTouched = (document: ChassisDocument, work: WorkingCopy): void => {
  for (const [kind, ids] of Object.entries(work.touched) as [ElementName, Set<string>][]) {
    for (const id of ids) {
      const element = findElement<{ id: string }>(document[collections[kind]], id);
      if (!element) continue;
      const placeOf = (path: readonly PropertyKey[]) => placeInElement(kind, id, element, path);
      checkBySchema(elementSchemas[kind], element, placeOf);
    }
  }
  for (const name of work.touchedSections) {
    const placeOf = (path: readonly PropertyKey[]) => [name, ...path].map(String).join('.');
    checkBySchema(sectionSchemas[name], document[name], placeOf);
  }
};

/** The document after the edit, with the patches there and back and the edit's name; or why it was
 *  refused: an element that is missing or there already, a value that the schema does not take, a
 *  key that is refused everywhere. Only what was touched is validated. */
export const applyEdit = (document: ChassisDocument, edit: Edit): EditResult => {
  try {
    if (document.version !== documentVersion) {
      refuse(`a newer version of this program made the document: open it there to change it`);
    }
    const plain = checkedShape(copyJson(edit) as Edit);
    let work: WorkingCopy | undefined;
    const [next, patches, inverse] = create(
      document,
      (draft) => {
        work = new WorkingCopy(document, draft);
        perform(work, document, plain);
      },
      { enablePatches: { pathAsArray: true } }
    );
    if (work) checkTouched(next, work);
    const name = editInWords(document, plain);
    return {
      ok: true,
      document: next,
      patches: patches as Patch[],
      inverse: inverse as Patch[],
      name
    };
  } catch (error) {
    if (error instanceof EditRefused) return { ok: false, problem: error.message };
    if (error instanceof NotJson)
      return { ok: false, problem: `the edit cannot be used: ${error.message}` };
    throw error;
  }
};
