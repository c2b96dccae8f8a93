/** What a timer shows, and says aloud at half time, one minute, ten seconds and the end. */
export interface TimerFace {
  readonly figure: string;
  /** Of ten, still filled. */
  readonly squares: number;
  /** Words when the time left has just passed a mark, coming from `before` seconds; null otherwise. */
  said(before: number): string | null;
}

export function timerFace(left: number, total: number): TimerFace {
  const whole = Math.ceil(left);
  const marks: readonly (readonly [number, string])[] = [
    [total / 2, 'Half time.'],
    ...(total > 90 ? [[60, 'One minute left.'] as const] : []),
    ...(total > 25 ? [[10, 'Ten seconds left.'] as const] : []),
    [0, 'Time is up. Read now.'],
  ];
  return {
    figure: `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`,
    squares: total > 0 ? Math.ceil((left / total) * 10) : 0,
    said: (before) => marks.find(([at]) => before > at && left <= at)?.[1] ?? null,
  };
}
