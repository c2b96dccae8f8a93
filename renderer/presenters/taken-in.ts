import type { HostAnswer } from '../../shared/host/host-api.ts';

type Taken = NonNullable<HostAnswer<'visits.import'>['taken']>;

/** A visit that came, with the sentence about it. */
export interface CameVisit {
  readonly visit: string;
  readonly coach: string;
  readonly words: string;
}

/** What came of taking a file in, as sentences. */
export interface TakenInView {
  readonly visits: readonly CameVisit[];
  /** About all that is no single visit. */
  readonly rest: readonly string[];
}

const SETTINGS_WORDS: Readonly<Record<Taken['settings'], string | null>> = {
  taken: 'The settings of the backup hold now; open the window again to see them.',
  kept: 'The settings of this machine stay as they are.',
  none: null,
};

/** What came of taking in a visit or a backup, in words. */
export function takenInView(taken: Taken): TakenInView {
  const { visits, unchanged, coaches, packs, drafts, practice, settings } = taken;
  const rest = [
    unchanged > 0
      ? `${visits.length === 0 && unchanged === 1 ? 'Everything of it' : `Everything of ${counted(unchanged, 'visit')}`} was here already. Nothing was changed.`
      : null,
    coaches > 0 ? `${counted(coaches, 'coach', 'coaches')} came along.` : null,
    packs.length > 0 ? `Packs of trees that came back: ${packs.join(', ')}.` : null,
    drafts > 0 ? `${counted(drafts, 'file')} of trees that you are writing came back.` : null,
    practice > 0 ? `${counted(practice, 'file')} of practice came back.` : null,
    SETTINGS_WORDS[settings],
  ];
  return {
    visits: visits.map(({ visit, coach, isNew, entries, photos }) => ({
      visit,
      coach,
      words: isNew
        ? `A visit that was not here, with ${counted(entries, 'entry', 'entries')}${photos > 0 ? ` and ${counted(photos, 'photo')}` : ''}.`
        : `Both sides have worked on it. ${counted(entries, 'entry', 'entries')}${photos > 0 ? ` and ${counted(photos, 'photo')}` : ''} that this machine did not have ${entries + photos === 1 ? 'was' : 'were'} added; nothing was taken away.`,
    })),
    rest: rest.filter((sentence) => sentence !== null),
  };
}

/** "1 visit", "3 visits". */
function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** "820 kB", "4.2 MB". */
export function sizeWords(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.max(1, Math.round(bytes / 1000))} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}
