import { STATUS_SAID } from '../knowledge/index.ts';
import type { ComplaintCase } from './complaint-case.ts';
import type { Block, Line } from './document.ts';
import { capital, joined, say } from './say.ts';

/** Every limit that a finding was held against, once: figure, source, how it was read, and what other sources say. */
export function limitList({ complaint, texts }: ComplaintCase): Block[] {
  const { tree, vocabulary } = texts.pinned;
  const ids = new Set(
    complaint.trail.flatMap(({ check, value }) =>
      value.kind === 'cant-do' ? [] : (tree.checks.find(({ id }) => id === check)?.limits ?? []),
    ),
  );
  const items = [...ids].flatMap((id): Line[] => {
    const limit = vocabulary.limits.get(id);
    if (!limit) return [];
    const field = (name: string): Line => texts.at(`limits.${id}.${name}`);
    const others = (limit.disagreement?.others ?? []).map((other, i) =>
      say(
        field(`disagreement.others.${i}.value`),
        ' (',
        field(`disagreement.others.${i}.source`),
        `, ${STATUS_SAID[other.status]})`,
      ),
    );
    return [
      say(
        capital(field('quantity')),
        ': ',
        field('value'),
        '. Source: ',
        field('source'),
        ` (${STATUS_SAID[limit.status]}).`,
        ...(others.length > 0
          ? [' Sources differ: ', joined(others, '; '), '. Taken here: ', field('disagreement.taken'), '.']
          : []),
      ),
    ];
  });
  return items.length > 0 ? [{ kind: 'list', items }] : [];
}
