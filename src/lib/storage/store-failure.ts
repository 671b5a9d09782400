// Why the browser did not keep or give back a chassis, in words that a person can act on.

export type StoreFailureKind =
  'full' | 'not allowed' | 'changed elsewhere' | 'newer store' | 'unreadable' | 'failed';

/** `message` says what is wrong and the way out, in one line. */
export class StoreFailure extends Error {
  override name = 'StoreFailure';
  readonly kind: StoreFailureKind;

  constructor(kind: StoreFailureKind, message: string, cause?: unknown) {
    super(message, { cause });
    this.kind = kind;
  }
}

const nameOf = (error: unknown): string =>
  typeof error === 'object' && error !== null && 'name' in error ? String(error.name) : '';

/** What the browser threw, as a failure in words. Names of errors: Indexed Database API 3.0, W3C. */
export const toStoreFailure = (error: unknown): StoreFailure => {
  if (error instanceof StoreFailure) return error;
  switch (nameOf(error)) {
    case 'QuotaExceededError':
      return new StoreFailure(
        'full',
        'the browser has no room left: save the chassis as a file, then remove kept ones that you can do without',
        error
      );
    case 'SecurityError':
    case 'NotAllowedError':
      return new StoreFailure(
        'not allowed',
        'the browser does not let this page keep anything: allow it in its settings, or save the chassis as a file',
        error
      );
    case 'VersionError':
      return new StoreFailure(
        'newer store',
        'a newer version of this program has been here: load the page again to get it',
        error
      );
    default:
      return new StoreFailure(
        'failed',
        'the browser could not reach its store: save the chassis as a file, then load the page again',
        error
      );
  }
};
