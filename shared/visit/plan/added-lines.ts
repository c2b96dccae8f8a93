import type { AccessState } from '../../knowledge/vocabulary.ts';
import type { DraftLine } from './draft-line.ts';
import { meanwhileOf } from './meanwhile.ts';
import type { AddedLine } from './state.ts';

/**
 * A line added by hand, or a proposal taken into the plan; that one is done where its host is open.
 *
 * @param host  line that opens the place, for a proposal.
 */
export function addedDraft(added: AddedLine, states: readonly AccessState[], host: DraftLine | undefined): DraftLine {
  const access = added.access ?? host?.access;
  return {
    id: added.line,
    from: added.of === undefined ? { kind: 'by-hand' } : { kind: 'renew-while-open', of: added.of, what: added.title },
    title: added.title,
    plain: added.why,
    asked: host ? `while open: ${host.title}` : 'added by hand',
    place: added.place ?? host?.place ?? null,
    why:
      added.why === '' && added.photos.length === 0
        ? []
        : [{ text: added.why, limits: [], photos: added.photos, at: added.at, by: added.by }],
    hazard: added.danger ? 'danger' : 'none',
    danger: added.danger,
    ifLeft: added.danger ? 'It can hurt people.' : '',
    urgency: added.urgency,
    parts: added.parts,
    minutes: added.minutes,
    accessIncluded: false,
    ...(access === undefined ? {} : { access }),
    states: host?.states ?? states,
    alsoWhileOpen: [],
    rebuildWords: '',
    meanwhile: added.danger
      ? meanwhileOf('creep-to-safe-place', `${added.title}: whoever wrote it down says that it can hurt people.`)
      : meanwhileOf('drive-and-book', 'This line alone does not hold the coach. What was not looked at is not known.'),
    proof: { state: 'to-do', steps: [], wait: '' },
  };
}
