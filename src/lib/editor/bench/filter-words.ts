// Picks what holds all the words that somebody typed, in any order, whatever the capitals.

/** A test for texts: true where every typed word is somewhere in them; true for all when none is typed.
 *  Example:  matcherOf("awg pvc")("PVC wire by AWG") // true
 */
export function matcherOf(typed: string): (...texts: readonly string[]) => boolean {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return (...texts) => {
    const whole = texts.join('\n').toLowerCase();
    return words.every((word) => whole.includes(word));
  };
}
