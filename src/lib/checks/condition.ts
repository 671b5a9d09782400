// What people write down of old insulation, read for whether it is failing.

const failingWords =
  /\b(?:brittle|crack|crumbl|flak|perish|taped?\b|burn|charred|scorch|melt|fray|stiff|baked|split|chafed|worn|rott?en|stripped bare|bare (?:at|in|where|spot)|(?:cotton|cloth|rubber|insulation) (?:gone|missing)|falls? off)/i;

/** "no cracks", "not brittle": the opposite. */
const denied = /\b(?:no|not|never|without)\s+\w*$/i;

/** True for "brittle", "cracked at the cup", "dry, frays"; false for "sound", "no cracks". */
export function readsAsFailing(condition: string): boolean {
  const match = failingWords.exec(condition);
  return match !== null && !denied.test(condition.slice(0, match.index));
}
