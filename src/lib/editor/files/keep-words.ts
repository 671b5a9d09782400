// What has to be said, in a line of its own, about whether the work is kept; and what can be done about it.

export interface KeepStanding {
  /** The version of this program that wrote the document, where it is a newer one; else null. */
  readonly newerVersion: number | null;
  readonly isFollowing: boolean;
  readonly problem: string | null;
  /** Whether the browser promised not to clear what it keeps; null before it was asked. */
  readonly isPromised: boolean | null;
  readonly editsSinceFile: number;
  /** The nag was put off in this visit at so many edits. */
  readonly putOffAt: number;
}

export type KeepAction = 'save a file' | 'try again' | 'take over' | 'later';

export interface KeepLine {
  readonly words: string;
  readonly weight: 'danger' | 'caution' | 'note';
  readonly actions: readonly KeepAction[];
}

/** Edits without a file after which one is asked for, where the browser may clear what it keeps. */
export const nagAfterEdits = 40;

/** Null where all is well. */
export const keepLineOf = (standing: KeepStanding): KeepLine | null => {
  const { newerVersion, isFollowing, problem, isPromised, editsSinceFile, putOffAt } = standing;
  if (isFollowing) {
    return {
      words:
        'This chassis is open in another window. Here you see what is changed there, and cannot change it.',
      weight: 'note',
      actions: ['take over']
    };
  }
  if (problem !== null) {
    return {
      words: `Not kept: ${problem}. What you see is still here while this page is open.`,
      weight: 'danger',
      actions: ['save a file', 'try again']
    };
  }
  if (newerVersion !== null) {
    return {
      words: `A newer version of this program (${newerVersion}) wrote this chassis: it can be looked at, printed and saved as it is, and not changed here.`,
      weight: 'note',
      actions: []
    };
  }
  if (isPromised !== true && editsSinceFile - putOffAt >= nagAfterEdits) {
    return {
      words: `This browser may clear what it keeps, and the last ${editsSinceFile} changes are in no file.`,
      weight: 'caution',
      actions: ['save a file', 'later']
    };
  }
  return null;
};
