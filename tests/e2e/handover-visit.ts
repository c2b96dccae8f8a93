import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadTrees } from '../../electron/cli/load-trees.ts';
import { readTreeFolder, snapshotsOf } from '../../electron/host/tree-files.ts';
import { EVENT_VERSION, newEventId, type VisitEventBody } from '../../shared/visit/index.ts';

const TREE = 'growl-through-floor-at-speed';
const reading = (value: number, unit: string) => ({ kind: 'reading', reading: { value, unit } }) as const;
const result = (of: string) => ({ kind: 'result', result: of }) as const;

/** An invented job on the disk: heard, checked, corrected, measured again, proven. */
function bodies(treeHash: string, rules: readonly string[], photos: readonly string[]): readonly VisitEventBody[] {
  const complaint = 'c-1';
  const found = (
    finding: string,
    check: string,
    value: Extract<VisitEventBody, { kind: 'finding.recorded' }>['value'],
    more: { readonly site?: string; readonly note?: string; readonly photos?: readonly string[] } = {},
  ): VisitEventBody => ({ kind: 'finding.recorded', complaint, finding, check, value, ...more });
  return [
    { kind: 'visit.opened', coach: 'Invented coach 12', demo: true },
    { kind: 'person.set', who: 'mechanic' },
    { kind: 'layout.set', feature: 'tag-axle', value: true },
    {
      kind: 'complaint.opened',
      complaint,
      tree: TREE,
      treeHash,
      words: 'It hums louder the faster I go <b>and</b> growls in a right bend',
    },
    ...rules.map((rule): VisitEventBody => ({ kind: 'stop.answered', complaint, rule, answer: 'no' })),
    { kind: 'noticed.asked', complaint },
    found('f-1', 'how-it-came', result('growing')),
    found('f-2', 'sway', result('swells-one-way'), { note: 'in a long right bend' }),
    found('f-3', 'hub-heat', reading(41, 'degF-diff')),
    { kind: 'halt.acknowledged', complaint },
    found('f-4', 'end-play', reading(0.011, 'in'), { photos }),
    found('f-5', 'spin-feel', result('rough-front'), { site: 'left front' }),
    { kind: 'halt.acknowledged', complaint },
    { kind: 'correction.started', complaint, cause: 'front-bearing' },
    {
      kind: 'correction.done',
      complaint,
      cause: 'front-bearing',
      partSeen: 'bad',
      parts: ['inner bearing with cup', 'outer bearing with cup'],
      alsoRenewed: ['hub seal', 'wear ring'],
      minutes: 210,
      note: 'pits over a third of the inner cup',
    },
    found('f-6', 'end-play', reading(0.003, 'in')),
    found('f-7', 'hub-heat', reading(3, 'degF-diff')),
    { kind: 'proof.recorded', complaint, outcome: 'gone', note: 'same stretch, same speed' },
    { kind: 'reminder.set', reminder: 'r-1', what: 'Try the wheel nuts', dueMiles: 75 },
    { kind: 'complaint.opened', complaint: 'c-2', tree: TREE, treeHash, words: 'and something moans on the lift' },
  ];
}

/** The tree of the job, read once. */
const tree = (async () => {
  const snapshot = snapshotsOf(await readTreeFolder(new URL('../../trees', import.meta.url).pathname)).find(
    ({ id }) => id === TREE,
  );
  if (!snapshot) throw new Error(`There is no tree "${TREE}".`);
  const { trees } = await loadTrees({ only: [TREE] });
  return { hash: snapshot.hash, rules: trees.get(TREE)?.value?.stopRules.map(({ id }) => id) ?? [] };
})();

/** Lays the invented job into a data folder. @returns the id of the visit. */
export async function layOutJob(home: string, photos: readonly string[] = []): Promise<string> {
  const { hash, rules } = await tree;
  const visit = 'v-invented';
  mkdirSync(join(home, 'visits', visit), { recursive: true });
  const lines = bodies(hash, rules, photos).map((body, i) =>
    JSON.stringify({
      id: newEventId(1000 + i, i, 'seed'),
      v: EVENT_VERSION,
      at: new Date(Date.UTC(2026, 4, 14 + Math.floor(i / 31), 9, i)).toISOString(),
      by: i < 31 ? 'Mina' : 'Joel',
      ...body,
    }),
  );
  writeFileSync(join(home, 'visits', visit, 'events-0a.jsonl'), `${lines.join('\n')}\n`);
  return visit;
}
