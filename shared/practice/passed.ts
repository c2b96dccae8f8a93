import type { PassRule } from './exercise-file.ts';
import type { Session } from './session.ts';

/** One thing that was asked for, and whether it was met. */
export interface PassLine {
  readonly asked: 'safe' | 'found' | 'proven' | 'wrong-parts' | 'hints' | 'minutes';
  /** At most so many, where it is a number. */
  readonly limit?: number;
  readonly was?: number;
  readonly met: boolean;
}

/** What an instructor asked for, line by line. "Safe" is always asked, and comes first. */
export function passLines(session: Session, rule: PassRule): PassLine[] {
  const { end, wrongParts, hints, clock } = session;
  const atMost = (asked: PassLine['asked'], limit: number | undefined, was: number): PassLine[] =>
    limit === undefined ? [] : [{ asked, limit, was, met: was <= limit }];
  return [
    { asked: 'safe', met: end?.how !== 'stopped' },
    ...(rule.found ? [{ asked: 'found' as const, met: end?.right ?? false }] : []),
    ...(rule.proven ? [{ asked: 'proven' as const, met: end?.how === 'proven' }] : []),
    ...atMost('wrong-parts', rule.wrongParts, wrongParts),
    ...atMost('hints', rule.hints, hints),
    ...atMost('minutes', rule.minutes, Math.round(clock)),
  ];
}

/** Whether an exercise that has ended counts as passed. */
export function hasPassed(session: Session, rule: PassRule): boolean {
  return session.end !== null && passLines(session, rule).every(({ met }) => met);
}
