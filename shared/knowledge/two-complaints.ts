/** Two complaints in one sentence: "leaks air when I brake and it growls above fifty". */
import { searchComplaints, type ComplaintIndex, type Hit } from './search.ts';

/** A piece of the words that is a complaint of its own. */
export interface ComplaintPart {
  /** The piece, as typed. */
  readonly words: string;
  readonly hit: Hit;
}

/** Least score of a piece for its complaint. Judgement, as the next two; set by the sentences that the tests keep. */
const CONVINCING = 5;
/** How much more a piece has to sound like its own complaint than like any other. */
const AHEAD = 1.4;
/** Place in the search over the whole sentence up to which both complaints have to stand. */
const AMONG = 4;

/** Where one clause ends and another may begin. */
const JOINTS =
  /\s*[.;!?,&\n]+\s*(?:(?:and|but|also|plus|then)\b\s*)*|\s+(?:as well as|and also|and then|and|but|also|plus|then|while|or)\s+/gi;

/**
 * The two complaints that a sentence names, in the order in which it names them.
 *
 * @returns null unless it can be parted in two pieces that both sound clearly like a complaint, and not like the same one.
 */
export function twoComplaints(index: ComplaintIndex, words: string): readonly [ComplaintPart, ComplaintPart] | null {
  const whole = searchComplaints(index, words)
    .slice(0, AMONG)
    .map(({ complaint }) => complaint);
  let best: { readonly parts: readonly [ComplaintPart, ComplaintPart]; readonly weight: number } | null = null;
  const joints = [...words.matchAll(JOINTS)];
  // "… and it growls, swells in bends": a comma parts complaints only where no word does.
  const said = joints.filter(([joint]) => /\p{L}|&/u.test(joint));
  for (const joint of said.length > 0 ? said : joints) {
    const first = convincing(index, words.slice(0, joint.index));
    const second = convincing(index, words.slice(joint.index + joint[0].length));
    if (!first || !second || first.hit.complaint === second.hit.complaint) continue;
    if (![first, second].every(({ hit }) => whole.includes(hit.complaint))) continue;
    const weight = first.hit.score + second.hit.score;
    if (!best || weight > best.weight) best = { parts: [first, second], weight };
  }
  return best?.parts ?? null;
}

/** A piece sounds like a complaint as a whole, or by its first clause when the rest only says more about it. */
function convincing(index: ComplaintIndex, words: string): ComplaintPart | null {
  const [first] = words.split(/[,;]/);
  const part = clearly(index, words) ?? (first === words ? null : clearly(index, first ?? ''));
  return part && { ...part, words: words.trim() };
}

function clearly(index: ComplaintIndex, words: string): ComplaintPart | null {
  const [hit, next] = searchComplaints(index, words);
  if (!hit || hit.words < 2 || hit.score < CONVINCING) return null;
  return hit.score >= AHEAD * (next?.score ?? 0) ? { words: words.trim(), hit } : null;
}
