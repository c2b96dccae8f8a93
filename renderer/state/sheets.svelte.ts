import type { AirTestSetup } from '../../shared/visit/index.ts';
import type { RoadPanelShown } from '../presenters/road/road-sheet.ts';
import { EMPTY_ENTRY, type BenchForm, type Entry } from '../presenters/bench/form.ts';
import type { UnitSystem } from '../../shared/units/index.ts';

/** What was typed and chosen on the sheets of a visit and is not recorded yet. It outlives the page: leaving loses nothing. */
export class Sheets {
  /** Step of the air test or item of the walk-round in front; null = the first one that is open. */
  airAt = $state<string | null>(null);
  /** The setup is asked again. */
  airSetupAsked = $state(false);
  airSetup = $state.raw<Partial<AirTestSetup>>({});
  roadPanel = $state<RoadPanelShown>('gauges');
  /** Offer of the road test → site chosen for it. */
  roadSites = $state.raw<Readonly<Record<string, string>>>({});
  /** Check (with its complaint) → offer ticked. */
  roadTicked = $state.raw<Readonly<Record<string, string>>>({});
  /** Quantity in front, or the parts. */
  inspecting = $state<string>('parts');
  part = $state<string>('hub');
  entries = $state.raw<Readonly<Record<string, Entry>>>({});
  choices = $state.raw<Readonly<Record<string, string>>>({});
  #visit: string | null = null;

  /** Starts afresh when another visit is in front: what was typed belongs to the one it was typed in. */
  of(visit: string | null): void {
    if (visit === this.#visit) return;
    this.#visit = visit;
    this.airAt = null;
    this.airSetupAsked = false;
    this.airSetup = {};
    this.roadSites = {};
    this.roadTicked = {};
    this.entries = {};
    this.choices = {};
  }

  entry(name: string): Entry {
    return this.entries[name] ?? EMPTY_ENTRY;
  }

  /** @param unit  what the field shows; kept with the text. */
  type(name: string, text: string, unit: string): void {
    this.entries = { ...this.entries, [name]: { text, unit: text.trim() === '' ? null : unit } };
  }

  chooseUnit(name: string, unit: string): void {
    this.entries = { ...this.entries, [name]: { text: this.entry(name).text, unit } };
  }

  choose(name: string, value: string): void {
    this.choices = { ...this.choices, [name]: value };
  }

  /** Forgets fields whose figures were recorded. */
  recorded(prefix: string): void {
    this.entries = Object.fromEntries(Object.entries(this.entries).filter(([name]) => !name.startsWith(prefix)));
  }

  /** What the presenters read. */
  form(system: UnitSystem): BenchForm {
    return { entry: (name) => this.entry(name), choice: (name) => this.choices[name] ?? '', system };
  }
}
