// The parts of a list while it is being read: a part grows a terminal with every wire that names
// one. References count without regard to case; a part is what one reference names.
import { findTubeBase, findTubeType, type ReferredKind } from '#handbook/index.ts';
import { isGroundTerminal } from './end-words.ts';
import type { EndReading } from './read-end.ts';

export interface TerminalDraft {
  readonly name: string;
  isGrounded: boolean;
}

export interface PartDraft {
  readonly key: string;
  reference: string;
  kind: ReferredKind;
  type: string | null;
  does: string | null;
  readonly firstRow: number;
  /** By name in small letters. */
  readonly terminals: Map<string, TerminalDraft>;
  /** How many wires name the part and no terminal of it. */
  bare: number;
  /** How often each unit was said to hold it. */
  readonly unitVotes: Map<string, number>;
  /** A lug on the metal of a unit that stands apart from the chassis. */
  isApart: boolean;
}

/** Where a wire ends: a named terminal, or the nth of those that nobody named. */
export type EndDraft =
  | { readonly part: PartDraft; readonly terminal: string }
  | { readonly part: PartDraft; readonly bare: number };

// Parts with one point: every wire that names them ends at it. "E1" is a post where no lug is named.
const onePoint: ReadonlySet<ReferredKind> = new Set(['splice', 'ground lug', 'clip']);
export const hasOnePoint = ({ kind, reference }: PartDraft): boolean =>
  onePoint.has(kind) || (kind === 'terminal strip' && /^E\d/.test(reference));

export class PartDrafts {
  readonly byKey = new Map<string, PartDraft>();
  private unnamedGrounds = 0;

  /** @param scope set where the same reference may stand in several units: the unit's name */
  private draft(reference: string, kind: ReferredKind, row: number, scope: string): PartDraft {
    const key = `${scope.toLowerCase()}\n${reference.toLowerCase()}`;
    const known = this.byKey.get(key);
    if (known) return known;
    const made: PartDraft = {
      key,
      reference,
      kind,
      type: null,
      does: null,
      firstRow: row,
      terminals: new Map(),
      bare: 0,
      unitVotes: new Map(),
      isApart: false
    };
    this.byKey.set(key, made);
    return made;
  }

  /** The place of an end that names a part or the chassis. */
  endAt(end: Exclude<EndReading, { kind: 'unknown' }>, row: number, scope: string): EndDraft {
    if (end.kind === 'ground') {
      // Each unnamed point of the metal is a part of its own; the zero byte keeps it from any name.
      const name = end.name ?? `\u0000${(this.unnamedGrounds += 1)}`;
      const part = this.draft(name, 'ground lug', row, scope);
      part.kind = 'ground lug';
      part.isApart ||= end.isApart;
      return { part, terminal: this.addTerminal(part, '1', true) };
    }
    const part = this.draft(end.reference, end.partKind, row, scope);
    if (end.does !== null) part.does ??= end.does;
    if (end.terminal !== null) {
      return { part, terminal: this.addTerminal(part, end.terminal, end.isGrounded) };
    }
    if (hasOnePoint(part)) return { part, terminal: this.addTerminal(part, '', false) };
    part.bare += 1;
    return { part, bare: part.bare };
  }

  private addTerminal(part: PartDraft, name: string, isGrounded: boolean): string {
    const key = name.toLowerCase();
    const isFoot = part.kind === 'terminal strip' && isGroundTerminal(name);
    const known = part.terminals.get(key) ?? { name, isGrounded: false };
    known.isGrounded ||= isGrounded || isFoot;
    part.terminals.set(key, known);
    return key;
  }

  /** Gives a part its type or base. @returns false where it has another one already */
  static setType(part: PartDraft, type: string): boolean {
    if (part.type !== null) return part.type.toLowerCase() === type.toLowerCase();
    part.type = type;
    if (part.kind === 'tube' && findTubeType(type)?.topCap === 'second anode') {
      part.kind = 'picture tube';
    }
    if (part.kind === 'other' && (findTubeType(type) ?? findTubeBase(type))) part.kind = 'tube';
    return true;
  }
}
