// A part kept as a pattern, to be placed again: its kind, terminals and what is between them, without the
// place and the company that it has.
import { addElement, doMany } from '#document/edits.ts';
import {
  orderAtEnd,
  type ChassisDocument,
  type Edit,
  type MakeId,
  type Part
} from '#document/index.ts';
import { copyPart } from './duplicate.ts';

/** "6CG7", "terminal strip 5", or the reference, and a number where that name is taken. */
const patternName = (part: Part, { patterns }: Pick<ChassisDocument, 'patterns'>): string => {
  const what = part.type ?? part.function ?? `${part.kind} as ${part.reference}`;
  const taken = new Set(Object.values(patterns).map(({ name }) => name.toLowerCase()));
  let name = `${what} pattern`;
  for (let n = 2; taken.has(name.toLowerCase()); n += 1) name = `${what} pattern ${n}`;
  return name;
};

export const keepPatternEdit = (
  part: Part,
  document: Pick<ChassisDocument, 'patterns'>,
  makeId: MakeId
): { readonly edit: Edit; readonly name: string } => {
  const name = patternName(part, document);
  const { kind, type, value, notes } = part;
  const pattern = {
    id: makeId('pattern'),
    order: orderAtEnd(document.patterns),
    name,
    kind,
    ...(type === undefined ? {} : { type }),
    ...(value === undefined ? {} : { value }),
    ...(notes === undefined ? {} : { notes }),
    ...copyPart(part, makeId)
  };
  const edit = doMany(`keep ${part.reference} as a pattern`, [addElement('pattern', pattern)]);
  return { edit, name };
};
