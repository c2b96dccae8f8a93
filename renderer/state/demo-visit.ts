import type { VisitEventBody } from '../../shared/visit/index.ts';
import type { LoadedTree } from './trees.ts';

/** Complaint of the invented visit. */
export const DEMO_COMPLAINT = 'growl-through-floor-at-speed';

/** An invented scenario for looking round: no such coach, owner or drive exists, and the visit says so on every page. */
export const DEMO = {
  coach: 'Invented coach (demo)',
  words: 'growl through the floor above 50, swells when I lean into a long left bend',
  who: 'mechanic',
} as const;

/** Invented answers and findings, as somebody might have given them: every safety question looked at, four findings. */
const FOUND: readonly (readonly [check: string, result: string])[] = [
  ['how-it-came', 'growing'],
  ['speed-sweep', 'rises-evenly'],
  ['load-change', 'no-change'],
  ['sway', 'swells-one-way'],
];

/** What happened in the invented visit after its complaint was opened. */
export function demoBodies({ tree }: LoadedTree, complaint: string, newId: () => string): VisitEventBody[] {
  return [
    ...tree.stopRules.map(({ id }): VisitEventBody => ({ kind: 'stop.answered', complaint, rule: id, answer: 'no' })),
    ...FOUND.map(([check, result]): VisitEventBody => ({
      kind: 'finding.recorded',
      complaint,
      finding: `f-${newId()}`,
      check,
      value: { kind: 'result', result },
    })),
  ];
}
