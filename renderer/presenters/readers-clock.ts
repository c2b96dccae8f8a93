import type { HandOverInput } from '../../shared/handover/index.ts';

const DAY = new Intl.DateTimeFormat('en', { day: 'numeric', month: 'short', year: 'numeric' });
const TIME = new Intl.DateTimeFormat('en', { hour: '2-digit', minute: '2-digit' });

/** The time of an event as the clock of this reader shows it; nothing where it cannot be read. */
export const readersClock: HandOverInput['clock'] = {
  day: (at) => shown(DAY, at),
  time: (at) => shown(TIME, at),
};

function shown(format: Intl.DateTimeFormat, at: string): string {
  // A day without a time is that day everywhere; as an instant it would be the day before, west of Greenwich.
  const date = new Date(/^\d{4}-\d{2}-\d{2}$/.test(at) ? `${at}T12:00` : at);
  return Number.isNaN(date.getTime()) ? '' : format.format(date);
}
