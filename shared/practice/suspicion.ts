/** How far somebody's own certainty can be trusted. */

/** What was said to be the cause, how sure, and whether it was. */
export interface Forecast {
  /** 0 to 1. */
  readonly share: number;
  readonly right: boolean;
}

/**
 * Brier score: the mean of (share − outcome)², outcome 1 when it was so and 0 when not. 0 is best, 1 worst; always saying 50
 * in 100 gives .25. Null without any forecast.
 *
 * @source Brier, Monthly Weather Review 78 (1950) 1–3, for one event; as defined in the glossary of the American
 *   Meteorological Society ("Brier score", read).
 */
export function brierScore(forecasts: readonly Forecast[]): number | null {
  if (forecasts.length === 0) return null;
  return forecasts.reduce((sum, { share, right }) => sum + (share - Number(right)) ** 2, 0) / forecasts.length;
}

/** Forecasts that said about the same, and how many of them came true. */
export interface Calibration {
  /** Lowest and highest share of the group, the highest left out but in the last one. */
  readonly from: number;
  readonly to: number;
  readonly said: number;
  readonly forecasts: number;
  readonly right: number;
}

const GROUPS = [0, 0.4, 0.6, 0.8, 0.95, 1] as const;

/** Forecasts by how sure they were; groups without any are left out. */
export function calibration(forecasts: readonly Forecast[]): Calibration[] {
  return GROUPS.slice(0, -1).flatMap((from, i): Calibration[] => {
    const to = GROUPS[i + 1]!;
    const last = i === GROUPS.length - 2;
    const group = forecasts.filter(({ share }) => share >= from && (share < to || last));
    if (group.length === 0) return [];
    return [
      {
        from,
        to,
        said: group.reduce((sum, { share }) => sum + share, 0) / group.length,
        forecasts: group.length,
        right: group.filter(({ right }) => right).length,
      },
    ];
  });
}

/** Fewer forecasts than this say little. Judgement. */
const FEW = 5;
/** Scores that lie closer than this are alike. Judgement. */
const ALIKE = 0.03;

/** The Brier score over time, the last few forecasts against those before, in plain words; empty while there are too few. */
export function brierOverTime(forecasts: readonly Forecast[]): string {
  const before = brierScore(forecasts.slice(0, -FEW));
  const lately = brierScore(forecasts.slice(-FEW));
  if (before === null || lately === null || forecasts.length < 2 * FEW) return '';
  const way =
    lately < before - ALIKE
      ? 'You know better than before how sure you can be.'
      : lately > before + ALIKE
        ? 'You know less well than before how sure you can be.'
        : 'No change to speak of.';
  return `Brier score (0 is best, saying 50 in 100 every time gives 0.25): ${before.toFixed(2)} before, ${lately.toFixed(2)} over the last ${FEW}. ${way}`;
}

/** A Brier score in plain words. */
export function brierWords(forecasts: readonly Forecast[]): string {
  const score = brierScore(forecasts);
  if (score === null) return 'You have not said yet what you suspect.';
  const mean = forecasts.reduce((sum, { share }) => sum + share, 0) / forecasts.length;
  const right = forecasts.filter((each) => each.right).length;
  const said = `On average you were ${Math.round(mean * 100)} in 100 sure, and right ${right} of ${forecasts.length} times.`;
  if (forecasts.length < FEW) return `${said} Too few to say more.`;
  const gap = mean - right / forecasts.length;
  const lean =
    gap > 0.1
      ? 'You trust your first idea too much.'
      : gap < -0.1
        ? 'You are right more often than you dare to say.'
        : 'You know well how sure you can be.';
  const against =
    score < 0.25 ? 'Better than saying 50 in 100 every time.' : 'No better than saying 50 in 100 every time.';
  return `${said} ${lean} ${against}`;
}
