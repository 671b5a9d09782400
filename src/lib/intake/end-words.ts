// Words that stand where an end should: not known, the chassis, and the nouns that parts go by.

/** "?", "unknown", "cut off": somebody looked, and did not find the end. */
export const isUnknownEnd = (text: string): boolean =>
  /^(?:[?\-–—.]+|unk(?:nown)?\.?|un-?identified|not (?:known|traced|found|yet|connected|sure)|tbd|n\/?[ack]|none|nowhere|lost|open|loose|cut|cut off|broken(?: off)?|floating|dead end(?:ed)?|see notes?|\(blank\)|x+)\??$/i.test(
    text
  );

/** Text that tells a way and names no place: "goes under the power transformer". */
export const tellsAWay = (text: string): boolean =>
  /^(?:goes|runs|disappears|under|behind|somewhere|into|in to|to|towards?|near|same|via|through|inside|comes|from|not|probably|maybe|could|see|cut|broken|loose|hangs|hanging|dangling|clipped|capped|taped)\b/i.test(
    text
  );

const ground = 'chassis ground|chassis gnd|chassis|chas|frame|metal|ground|grnd|gnd|earth';
const point = '(?: (?:lug|tab|point|terminal|pt))?';
const unnamed = new RegExp(`^(?!metal)(?:${ground})\\.?${point}$`, 'i');
const numbered = new RegExp(
  `^(${ground})\\.?[\\s\\-#:]*(?:lug|tab|point|terminal|no\\.?)?[\\s\\-#:]*(\\d{1,3}[a-z]?)$`,
  'i'
);
const placed = new RegExp(
  `^(${ground})\\.?${point},? (?:at|near|by|next to|beside|under|@) (.{1,60})$`,
  'i'
);
const bracketed = new RegExp(`^(${ground})\\.? ?\\((.{1,60})\\)$`, 'i');

/** "chassis", "gnd lug": a point of the metal that nobody named. */
export const isUnnamedGround = (text: string): boolean => unnamed.test(text);

export interface NamedGround {
  /** "metal": that of a unit which stands apart from the chassis. */
  readonly word: 'chassis' | 'ground' | 'metal';
  readonly number: string | null;
  readonly place: string | null;
}

/** A point of the metal that was told from the others: "ground 4", "chassis at TS2"; null for none. */
export const findNamedGround = (text: string): NamedGround | null => {
  const byNumber = numbered.exec(text);
  if (byNumber) {
    return { word: wordOf(byNumber[1]), number: (byNumber[2] ?? '').toUpperCase(), place: null };
  }
  const byPlace = placed.exec(text) ?? bracketed.exec(text);
  if (!byPlace) return null;
  const place = (byPlace[2] ?? '').replace(/^(?:at|near|by) /i, '').trim();
  return { word: wordOf(byPlace[1]), number: null, place };
};

const wordOf = (text: string | undefined): NamedGround['word'] => {
  if (/^metal/i.test(text ?? '')) return 'metal';
  return /^(?:chas|frame)/i.test(text ?? '') ? 'chassis' : 'ground';
};

/** A terminal that its own name says is on the metal: "ground", "gnd lug". */
export const isGroundTerminal = (name: string): boolean => isUnnamedGround(name);

/** What people call parts that have no reference: the last of these in a text ends the part's name. */
export const partNouns =
  /\b(?:tube|damper|crt|kinescope|yoke|speaker|spkr|antenna|loop|flyback|transformer|xfmr|choke|coil|lamp|light|fuse|switch|control|pot|cord|plug|interlock|jack|socket|receptacle|strip|capacitor|condenser|resistor|globar|ballast|rectifier|splice|board|pcb|tuner|cage|relay)\b/gi;

/** Letters that stand for one part without a number: "CRT-3" is its pin 3. */
export const lettersWithoutNumber: ReadonlySet<string> = new Set(
  'CRT PT OT FBT HOT VOT ANT LA SPK DY POT VC GLOBAR'.split(' ')
);
