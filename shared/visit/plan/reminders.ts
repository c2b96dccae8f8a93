import type { PlanLine, Reminder, ReminderProposal } from './plan.ts';

/** What work calls for looking at again. Common practice, no source. */
const CALLS: readonly {
  readonly when: (line: Pick<PlanLine, 'accessSteps' | 'title' | 'parts' | 'plain'>) => boolean;
  readonly what: string;
  readonly afterMiles: number;
}[] = [
  {
    when: ({ accessSteps, parts }) =>
      accessSteps.some(({ state }) => state === 'wheel-off') || parts.some((part) => /\bstuds?\b/.test(part)),
    what: 'Torque the wheel nuts again (50 to 100 miles after the wheel was off)',
    afterMiles: 50,
  },
  {
    when: ({ accessSteps }) => accessSteps.some(({ state }) => state === 'hub-open'),
    what: 'Read hub temperature against the other side',
    afterMiles: 50,
  },
  {
    when: ({ title, parts, plain }) =>
      [title, plain, ...parts].some((words) => /\b(seal|gasket|hose|leak|oil|coolant|fluid)s?\b/i.test(words)),
    what: 'Clean it, drive, look again for a leak',
    afterMiles: 50,
  },
];

/** Reminders that a line calls for and that nobody has set for it yet. */
export function reminderProposals(lines: readonly PlanLine[], set: readonly Reminder[]): ReminderProposal[] {
  return lines.flatMap((line) =>
    CALLS.filter(
      ({ when, what }) => when(line) && !set.some((each) => each.line === line.id && each.what === what),
    ).map(({ what, afterMiles }) => ({ what, afterMiles, line: line.id, source: 'common practice' })),
  );
}
