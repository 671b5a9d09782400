// Most rules look at one wire, one terminal or one net at a time. Saying so lets their findings be kept
// after an edit for all that the edit did not touch.
import type { Wire } from '#document/index.ts';
import type { Net, Study, TerminalEntry } from '#study/index.ts';
import type { Finding, Rule } from './finding.ts';

export type Piece =
  | {
      /** Looks at a wire, its study, its nets, the terminals that it ends at, its cable and supports, and
       *  at wires that it is bundled with. */
      readonly each: 'wire';
      readonly check: (study: Study, wire: Wire) => Finding[];
    }
  | {
      /** Looks at a terminal, what is soldered to it, and the wires that end there with their studies. */
      readonly each: 'terminal';
      readonly check: (study: Study, entry: TerminalEntry) => Finding[];
    }
  | {
      /** Looks at a net, at the ends, numbers and volts of its wires and how they are joined, and at
       *  nothing beyond. */
      readonly each: 'net';
      readonly check: (study: Study, net: Net) => Finding[];
    }
  | {
      /** Looks at anything, or at what `reads` names. */
      readonly each: 'chassis';
      readonly check: (study: Study) => Finding[];
      readonly reads?: (study: Study) => readonly unknown[];
    };

export const eachWire = (check: (study: Study, wire: Wire) => Finding[]): Piece => ({
  each: 'wire',
  check
});

export const eachTerminal = (check: (study: Study, entry: TerminalEntry) => Finding[]): Piece => ({
  each: 'terminal',
  check
});

export const eachNet = (check: (study: Study, net: Net) => Finding[]): Piece => ({
  each: 'net',
  check
});

/** @param reads what of the study it looks at: as long as all of it is the same, so are its findings */
export const wholeChassis = (
  check: (study: Study) => Finding[],
  reads?: (study: Study) => readonly unknown[]
): Piece => ({ each: 'chassis', check, ...(reads ? { reads } : {}) });

/** A rule's way of checking, made of pieces; findings come piece by piece. */
export const inPieces = (...pieces: readonly Piece[]): Pick<Rule, 'check' | 'pieces'> => ({
  pieces,
  check: (study) => pieces.flatMap((piece) => checkPiece(piece, study))
});

export function checkPiece(piece: Piece, study: Study): Finding[] {
  switch (piece.each) {
    case 'wire':
      return study.index.wires.flatMap((wire) => piece.check(study, wire));
    case 'terminal':
      return study.index.terminals.flatMap((entry) => piece.check(study, entry));
    case 'net':
      return [...study.nets.values()].flatMap((net) => piece.check(study, net));
    case 'chassis':
      return piece.check(study);
  }
}
