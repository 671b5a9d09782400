// Another of the same beside the first: terminals and elements get ids of their own, the reference the
// next free number. Wires do not come along: nobody has seen them there.
import { addElement, doMany } from '#document/edits.ts';
import {
  orderAtEnd,
  type ChassisDocument,
  type Edit,
  type MakeId,
  type Part
} from '#document/index.ts';
import { holdHomes, type Body } from './bodies.ts';
import { nextReference } from './next-reference.ts';
import type { ToolWorld } from './tool.ts';

/** So far beside the first the copy stands, mm. */
const besideMm = 12;

/** The part again, with ids of its own and joined to nothing. */
export const copyPart = (
  part: Pick<Part, 'terminals' | 'elements'>,
  makeId: MakeId
): Pick<Part, 'terminals' | 'elements'> => {
  const ids = new Map(Object.keys(part.terminals).map((id) => [id, makeId('terminal')]));
  const terminals = Object.values(part.terminals).map((terminal) => {
    const { on, leadsCounted, ...own } = terminal;
    void [on, leadsCounted];
    return { ...own, id: ids.get(terminal.id) ?? terminal.id };
  });
  const elements = Object.values(part.elements ?? {}).map((element) => ({
    ...element,
    id: makeId('element'),
    from: ids.get(element.from) ?? element.from,
    ...(element.to === undefined ? {} : { to: ids.get(element.to) ?? element.to })
  }));
  return {
    terminals: Object.fromEntries(terminals.map((terminal) => [terminal.id, terminal])),
    ...(elements.length === 0
      ? {}
      : { elements: Object.fromEntries(elements.map((element) => [element.id, element])) })
  };
};

/** The edit that puts a copy beside each of them, and the keys of the copies. */
export const duplicateEdit = (
  bodies: readonly Body[],
  { study, scene, makeId }: ToolWorld
): { readonly edit: Edit; readonly chosen: ReadonlySet<string> } => {
  let document: ChassisDocument = study.document;
  const edits: Edit[] = [];
  const chosen = new Set<string>();
  for (const { subject, placed, hanging } of bodies) {
    const support = subject.kind === 'support' ? document.supports[subject.id] : undefined;
    if (support) {
      const { x, y } = support.place;
      const copy = {
        ...support,
        id: makeId('support'),
        order: orderAtEnd(document.supports),
        place: { ...support.place, x: x + besideMm, y: y + besideMm }
      };
      document = { ...document, supports: { ...document.supports, [copy.id]: copy } };
      edits.push(addElement('support', copy));
      chosen.add(`support ${copy.id}`);
      continue;
    }
    const part = placed?.part ?? hanging?.part;
    if (!part) continue;
    const { mates, diagramPlace, place, ...own } = part;
    void [mates, diagramPlace];
    const copy: Part = {
      ...own,
      ...copyPart(part, makeId),
      id: makeId('part'),
      order: orderAtEnd(document.parts),
      reference: nextReference(document, part.reference.replace(/\d.*$/, '') || part.reference),
      ...(place
        ? { place: { ...place, x: place.x + besideMm, y: place.y + besideMm, by: 'hand' } }
        : {})
    };
    document = { ...document, parts: { ...document.parts, [copy.id]: copy } };
    edits.push(addElement('part', copy));
    chosen.add(`part ${copy.id}`);
  }
  const count = chosen.size;
  const name = count === 1 ? `duplicate ${bodies[0]?.name ?? ''}` : `duplicate ${count} things`;
  return { edit: doMany(name, [...holdHomes(scene), ...edits]), chosen };
};
