// What a picture is called wherever it is kept: the hash of its bytes, so that the same picture is kept once
// and a changed one is noticed.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** The hash of a picture's file, 64 digits of SHA-256 (FIPS 180-4), as the document's photos name it. */
export const hashOfPicture = (bytes: Uint8Array): string => bytesToHex(sha256(bytes));
