// Words that stand where an end should: not known, the chassis, and the nouns that parts go by.

/** "?", "unknown", "cut off": somebody looked, and did not find the end. */
export const isUnknownEnd = (text: string): boolean =>
  /^(?:[?\-–—.]+|unk(?:nown)?\.?|un-?identified|not (?:known|traced|found|yet|connected|sure)|tbd|n\/?[ack]|none|nowhere|lost|open|loose|cut|cut off|broken(?: off)?|floating|dead end(?:ed)?|see notes?|\(blank\)|x+)\??$/i.test(
    text
  );

/** Text that tells a way and names no place: "goes under the power transformer". */
export const tellsAWay = (text: string): boolean =>
  /^(?:goes|runs|disappears|under|behind|somewhere|into|in to|to|towards?|near|same|via|through|inside|comes|from|not|probably|maybe|could|see)\b/i.test(text);

const ground = 'chassis ground|chassis gnd|chassis|chas|frame|ground|grnd|gnd|earth';

/** "chassis", "gnd lug": a point of the metal that nobody named. */
export const isUnnamedGround = (text: string): boolean =>
  new RegExp(`^(?:${ground})\\.?(?: (?:lug|tab|point|terminal|pt))?$`, 'i').test(text);

/** The name of a ground that was told from the others: "ground 4", "chassis at TS2"; null for none. */
export const findNamedGround = (
  text: string
): {
  readonly word: string;
  readonly number: string | null;
  readonly place: string | null;
} | null => {
  const numbered = new RegExp(
    `^(${ground})\\.?[\\s\\-#:]*(?:lug|tab|point|terminal|no\\.?)?[\\s\\-#:]*(\\d{1,3}[a-z]?)$`,
    'i'
  ).exec(text);
  if (numbered)
    return { word: wordOf(numbered[1]), number: (numbered[2] ?? '').toUpperCase(), place: null };
  const placed =
    new RegExp(
      `^(${ground})\\.?(?: (?:lug|tab|point))?,? (?:at|near|by|next to|beside|under|@) (.{1,60})$`,
      'i'
    ).exec(text) ?? new RegExp(`^(${ground})\\.? ?\\((.{1,60})\\)$`, 'i').exec(text);
  if (placed) return { word: wordOf(placed[1]), number: null, place: (placed[2] ?? '').trim() };
  return null;
};

const wordOf = (text: string | undefined): string =>
  /^(?:chas|frame)/i.test(text ?? '') ? 'chassis' : 'ground';

/** A terminal that its own name says is on the metal: "ground", "gnd lug". */
export const isGroundTerminal = (name: string): boolean => isUnnamedGround(name);

/** What people call parts that have no reference: the last of these in a text ends the part's name. */
export const partNouns =
  /\b(?:tube|damper|crt|kinescope|yoke|speaker|spkr|antenna|loop|flyback|transformer|xfmr|choke|coil|lamp|light|fuse|switch|control|pot|cord|plug|interlock|jack|socket|receptacle|strip|capacitor|condenser|resistor|globar|ballast|rectifier|splice|board|pcb|tuner|cage|relay)\b/gi;

/** Letters that stand for one part without a number: "CRT-3" is its pin 3. */
export const lettersWithoutNumber: ReadonlySet<string> = new Set(
  'CRT PT OT FBT HOT VOT ANT LA SPK DY POT VC GLOBAR'.split(' ')
);
