// The findings after an edit, from those before it: a rule in pieces is asked again only about what the
// edit has touched. What is kept is the very same object, so that whatever shows findings can keep it too.
import type { Id, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { Study } from '#study/index.ts';
import { changedKeys, sameItems } from '#study/same.ts';
import { standsAlike } from '#study/study-wire.ts';
import type { Finding, Rule } from './finding.ts';
import { checkPiece, type Piece } from './pieces.ts';
import { rules as allRules } from './registry.ts';
import { worstFirst } from './run-checks.ts';

/** A validator that remembers the last study and what it said of it. Its answer is that of `runChecks`. */
export function makeChecker(rules: readonly Rule[] = allRules): (study: Study) => Finding[] {
  const pieces = rules.flatMap((rule): Piece[] => [
    ...(rule.pieces ?? [{ each: 'chassis', check: rule.check }])
  ]);
  let last: { readonly study: Study; readonly kept: readonly Kept[] } | undefined;
  return (study) => {
    const touched = last && findTouched(last.study, study);
    const kept = pieces.map((piece, n) => {
      const was = last?.kept[n];
      return touched && was ? askAgain(piece, study, touched, was) : askFirst(piece, study);
    });
    last = { study, kept };
    return worstFirst(kept.flatMap(({ findings }) => findings));
  };
}

/** What a piece said: all of it in order, and for wires, terminals and nets what it said of each. */
interface Kept {
  readonly findings: readonly Finding[];
  /** Only of those that it said something of. */
  readonly of: ReadonlyMap<string, readonly Finding[]>;
  readonly read: readonly unknown[] | null;
}

type PieceOfMany = Exclude<Piece, { readonly each: 'chassis' }>;
const nothing: ReadonlyMap<string, readonly Finding[]> = new Map();

function askFirst(piece: Piece, study: Study): Kept {
  if (piece.each === 'chassis') {
    const findings = checkPiece(piece, study);
    return { findings, of: nothing, read: piece.reads?.(study) ?? null };
  }
  const of = new Map<string, readonly Finding[]>();
  for (const key of keysOf(piece, study)) note(of, key, askAbout(piece, study, key));
  return { findings: [...of.values()].flat(), of, read: null };
}

function askAgain(piece: Piece, study: Study, touched: Touched, was: Kept): Kept {
  if (piece.each === 'chassis') {
    const read = piece.reads?.(study) ?? null;
    if (read && was.read && sameItems(was.read, read)) return was;
    return { findings: checkPiece(piece, study), of: nothing, read };
  }
  const of = new Map(was.of);
  for (const key of touched[piece.each]) note(of, key, askAbout(piece, study, key));
  const isSaid = of.size > 0 || was.of.size > 0;
  const isOther =
    touched.isReordered || [...touched[piece.each]].some((key) => of.get(key) !== was.of.get(key));
  if (!isSaid || !isOther) return was;
  const findings = keysOf(piece, study).flatMap((key) => of.get(key) ?? []);
  return { findings, of, read: null };
}

function note(of: Map<string, readonly Finding[]>, key: string, said: readonly Finding[]): void {
  if (said.length > 0) of.set(key, said);
  else of.delete(key);
}

/** All that a piece looks at, in the order in which it does. */
function keysOf({ each }: PieceOfMany, { index, nets }: Study): readonly string[] {
  if (each === 'wire') return index.wires.map(({ id }) => id);
  return each === 'terminal' ? index.terminals.map(({ key }) => key) : [...nets.keys()];
}

/** Nothing is said of what is no longer there. */
function askAbout(piece: PieceOfMany, study: Study, key: string): readonly Finding[] {
  if (piece.each === 'net') {
    const net = study.nets.get(key);
    return net ? piece.check(study, net) : [];
  }
  if (piece.each === 'terminal') {
    const entry = study.index.terminalByKey.get(key);
    return entry ? piece.check(study, entry) : [];
  }
  const wire = findElement(study.document.wires, key);
  return wire ? piece.check(study, wire) : [];
}

/** What is to be asked about again, by id or key, what is gone among it. */
interface Touched {
  readonly wire: ReadonlySet<Id>;
  readonly terminal: ReadonlySet<string>;
  readonly net: ReadonlySet<string>;
  readonly isReordered: boolean;
}

/** Undefined where all of it has to be: what is not a wire has changed, and wires lean on that. */
function findTouched(before: Study, now: Study): Touched | undefined {
  if (!sameItems(groundOf(before), groundOf(now))) return undefined;
  const ids = new Set([
    ...changedWires(before, now),
    ...changedKeys(before.wires, now.wires),
    ...changedKeys(before.bundlesOf, now.bundlesOf),
    ...changedKeys(now.bundlesOf, before.bundlesOf)
  ]);
  const nets = new Set([
    ...changedKeys(before.nets, now.nets),
    ...changedKeys(now.nets, before.nets)
  ]);
  for (const key of nets) {
    const net = now.nets.get(key);
    // A wire does not see who else came to its net or went.
    if (net && !standsAlike(before.nets.get(key), net)) net.wires.forEach((id) => ids.add(id));
  }
  // A wire is judged with those beside it.
  for (const id of [...ids]) {
    for (const { wires } of now.bundlesOf.get(id) ?? []) wires.forEach((mate) => ids.add(mate));
  }
  const terminals = new Set<string>();
  for (const id of ids) {
    const was = findElement(before.document.wires, id);
    const wire = findElement(now.document.wires, id);
    const isOtherToNet = !was || !wire || !isSameToNet(was, wire);
    for (const [{ index, netOf }, one] of [[before, was] as const, [now, wire] as const]) {
      for (const end of one ? [one.from, one.to] : []) {
        const key = index.findAt(end)?.key;
        if (key === undefined) continue;
        terminals.add(key);
        const net = netOf.get(key);
        if (net !== undefined && isOtherToNet) nets.add(net);
      }
    }
  }
  const isReordered =
    !sameItems(keysInOrder(before), keysInOrder(now)) ||
    !sameItems([...before.nets.keys()], [...now.nets.keys()]);
  return { wire: ids, terminal: terminals, net: nets, isReordered };
}

/** The pieces that look at nets see no more of a wire than that. */
const isSameToNet = (a: Wire, b: Wire): boolean =>
  a.number === b.number &&
  a.order === b.order &&
  a.carries === b.carries &&
  a.from === b.from &&
  a.to === b.to &&
  a.construction === b.construction &&
  a.isPart === b.isPart;

/** Wires that are other than they were, that came, and that went. */
function changedWires({ document: was }: Study, { document: now }: Study): readonly Id[] {
  const others = Object.keys(now.wires).filter(
    (id) => findElement(now.wires, id) !== findElement(was.wires, id)
  );
  return [...others, ...Object.keys(was.wires).filter((id) => !findElement(now.wires, id))];
}

const keysInOrder = ({ index }: Study): readonly Id[] => index.wires.map(({ id }) => id);

const groundOf = ({ policy, document }: Study): readonly unknown[] => [
  policy,
  document.identity,
  document.units,
  document.parts,
  document.cables,
  document.supports
];
