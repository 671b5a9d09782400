// Everything about a chassis that the layout and the figures need, decided before anything is
// placed: what is drawn as what, in which block, in which order.
import type { Id, Part, Terminal, Unit } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { sortByOrder } from '#document/order.ts';
import { classBandOf, type Study } from '#study/index.ts';
import { formatStep, type NumberTag } from '../figures/number-tag.ts';
import { buildHomes, buildParents, orderUnits, type Block, type UnitParts } from './blocks.ts';
import { buildLinks, type Link, type Links } from './links.ts';
import { rankParts } from './ranks.ts';
import { buildNetRoles, sideOfTerminal, type LineRole } from './roles.ts';
import type { Side } from './sides.ts';
import { terminalKey } from '#study/terminal-key.ts';

export interface Plan {
  readonly study: Study;
  readonly sheet: Block;
  readonly homes: ReadonlyMap<Id, Block>;
  readonly parents: ReadonlyMap<string, Block>;
  readonly links: Links;
  /** The order of the parts of one block along the signal. */
  readonly rankOf: (part: Id) => number;
  readonly partOf: (id: Id) => Part;
  readonly terminalsOf: (id: Id) => readonly Terminal[];
  readonly sideOf: (part: Id, terminal: Id) => Side | null;
  readonly roleOf: (link: Link) => LineRole;
  /** A wire's number and step; the number alone where `bare`. */
  readonly tagOf: (wire: Id, bare?: boolean) => NumberTag;
}

export const buildTag = (study: Study, id: Id, bare: boolean): NumberTag => {
  const wire = findElement(study.document.wires, id);
  const need = study.wires.get(id)?.need ?? null;
  const step = need
    ? `${need.atLeast || need.beyondLadder ? '≥' : ''}${formatStep(need.requiredV)}`
    : '?';
  return {
    wire: id,
    number: wire === undefined || wire.number === '' ? '–' : wire.number,
    step: bare ? '' : step,
    band: classBandOf(need?.requiredV ?? null)
  };
};

/** Units with their parts; parts whose unit is missing stand together in a box of their own. */
const listUnits = (study: Study, drawn: readonly Part[]): UnitParts[] => {
  const { document } = study;
  const byUnit = new Map<Id | null, Part[]>();
  for (const part of drawn) {
    const unit = findElement(document.units, part.unit) ? part.unit : null;
    byUnit.set(unit, [...(byUnit.get(unit) ?? []), part]);
  }
  const known = sortByOrder(document.units).map((unit: Unit) => ({
    id: `unit-${unit.id}`,
    unit,
    name: unit.name,
    parts: byUnit.get(unit.id) ?? []
  }));
  const homeless = byUnit.get(null) ?? [];
  const rest = { id: 'unit-none', unit: null, name: 'No unit given', parts: homeless };
  return [...known, ...(homeless.length > 0 ? [rest] : [])].filter(({ parts }) => parts.length > 0);
};

const weights: Readonly<Record<LineRole, number>> = {
  signal: 1,
  supply: 0.2,
  heater: 0.05,
  chassis: 0.2
};

const buildUnitBlock = (
  { id, unit, name, parts }: UnitParts,
  wired: ReadonlySet<Id>,
  ranks: ReadonlyMap<Id, number>
): Block => {
  const ordered = parts
    .filter((part) => wired.has(part.id))
    .map((part) => part.id)
    .sort((a, b) => (ranks.get(a) ?? 0) - (ranks.get(b) ?? 0));
  const loose = parts.filter((part) => !wired.has(part.id)).map((part) => part.id);
  return { id, kind: 'unit', name, unit, blocks: [], parts: ordered, loose };
};

/** Decides what is drawn, as what and where in the order of things. */
export const buildPlan = (study: Study): Plan => {
  const { index } = study;
  const roles = buildNetRoles(study);
  const links = buildLinks(study, index.partById);
  const partOf = (id: Id): Part => {
    const part = index.partById.get(id);
    if (!part)
      throw new RangeError(`the drawing asks for part ${id}, which the document does not have`);
    return part;
  };
  const roleOf = ({ from }: Link): LineRole => {
    if (from.terminal === null) return 'signal';
    const net = study.netOf.get(terminalKey(from.part, from.terminal));
    return (net === undefined ? undefined : roles.get(net)) ?? 'signal';
  };
  const drawn = index.parts.filter(({ id }) => !links.absorbed.has(id));
  const wired = new Set(links.lines.flatMap(({ from, to }) => [from.part, to.part]));
  const units = orderUnits(listUnits(study, drawn));
  const ranks = new Map<Id, number>();
  const blocks = units.map((unit): Block => {
    const own = new Set(unit.parts.map((part) => part.id));
    const inside = links.lines.filter(({ from, to }) => own.has(from.part) && own.has(to.part));
    const lines = inside.map((link) => ({
      from: link.from.part,
      to: link.to.part,
      weight: weights[roleOf(link)]
    }));
    for (const [id, rank] of rankParts(unit.parts, lines)) ranks.set(id, rank);
    return buildUnitBlock(unit, wired, ranks);
  });
  const sheet: Block = {
    id: 'sheet',
    kind: 'sheet',
    name: '',
    unit: null,
    blocks,
    parts: [],
    loose: []
  };
  return {
    study,
    sheet,
    homes: buildHomes(sheet),
    parents: buildParents(sheet),
    links,
    rankOf: (part) => ranks.get(part) ?? 0,
    partOf,
    terminalsOf: (id) => index.terminalsOf.get(id) ?? [],
    sideOf: (part, terminal) => {
      const found = partOf(part);
      const own = findElement(found.terminals, terminal);
      return own ? sideOfTerminal(study, roles, found, own) : null;
    },
    roleOf,
    tagOf: (wire, bare = false) => buildTag(study, wire, bare)
  };
};
