import { packError, unsafeDrawing, type PackProblem } from '../../knowledge/pack/index.ts';
import { visitProblems } from './check-visit.ts';
import { keptTreeProblems } from './kept-tree.ts';
import { TEXT_BYTES } from './limits.ts';
import { readLogLines, type LogRecord } from './log-lines.ts';
import type { Manifest } from './manifest.ts';
import { pictureFault } from './picture-size.ts';
import { placeOf, type Place } from './places.ts';

/** What the check needs of the machine: it has no hash function and no trees of its own. */
export interface CheckTools {
  /** SHA-256 over names and contents of a tree and its vocabulary, hex. */
  readonly hashOf: (files: Record<string, string>) => string;
  /** Hashes of the trees that the program has itself. */
  readonly known: ReadonlySet<string>;
  /** Why a photo is not as this program stores one: what it holds beside its picture, or where it is damaged; null = it is. */
  readonly photoFault: (name: string, bytes: Uint8Array) => string | null;
}

/** More faults than anybody mends by hand: what comes after is not looked at. */
const MOST_PROBLEMS = 60;

/**
 * Looks at everything in an exchange, file by file in the order of the paths (which brings photos and trees before the
 * visits that speak of them), so that no more than one tree and one visit is ever held.
 */
export class ExchangeCheck {
  readonly problems: PackProblem[] = [];
  readonly #manifest: Manifest;
  readonly #listed: ReadonlyMap<string, Manifest['files'][number]>;
  readonly #tools: CheckTools;
  readonly #whole: boolean;
  readonly #photos = new Set<string>();
  readonly #trees = new Set<string>();
  readonly #coachesNamed = new Set<string>();
  readonly #coaches = new Set<string>();
  #tree: { readonly hash: string; readonly files: Map<string, string> } | null = null;
  #visit: { readonly id: string; readonly records: LogRecord[] } | null = null;

  constructor(manifest: Manifest, tools: CheckTools) {
    this.#manifest = manifest;
    this.#listed = new Map(manifest.files.map((file) => [file.path, file]));
    this.#tools = tools;
    this.#whole = manifest.kind === 'backup';
  }

  /** No fault that refuses it so far. */
  good(): boolean {
    return !this.problems.some(({ level }) => level === 'error');
  }

  /** Whether there is any use in looking on. */
  enough(): boolean {
    return this.problems.filter(({ level }) => level === 'error').length >= MOST_PROBLEMS;
  }

  /** Holds the paths of the zip against the list in the manifest. @returns what each file is. */
  places(paths: readonly string[]): ReadonlyMap<string, Place> {
    const places = new Map<string, Place>();
    const seen = new Set<string>();
    if (this.#listed.size < this.#manifest.files.length)
      this.#say('manifest-damaged', 'manifest.json', 'The list names a file twice. Export it anew.');
    for (const path of paths) {
      const place = placeOf(path, this.#whole);
      if ('code' in place) this.problems.push(place);
      else if (seen.has(path))
        this.#say('file-twice', path, 'The zip holds this file twice. Export it anew; do not add to the zip by hand.');
      else if (place.kind !== 'manifest' && !this.#listed.has(path))
        this.#say('not-in-the-list', path, 'The list in manifest.json does not name this file. Export it anew.');
      if (!('code' in place)) places.set(path, place);
      seen.add(path);
    }
    for (const path of this.#listed.keys())
      if (!seen.has(path))
        this.#say('file-missing', path, 'The list names this file and it is not in the zip. Export it anew.');
    const visits = new Set(this.#manifest.visits.map(({ visit }) => visit));
    if (visits.size < this.#manifest.visits.length)
      this.#say('manifest-damaged', 'manifest.json', 'The list names a visit twice. Export it anew.');
    const withLog = new Set([...places.values()].flatMap((each) => (isVisitLog(each) ? [each.id] : [])));
    for (const id of new Set([...visits, ...withLog]))
      if (!visits.has(id))
        this.#say('foreign-id', `visits/${id}`, 'The file holds a visit that its list does not name. Export it anew.');
      else if (!withLog.has(id))
        this.#say('file-missing', `visits/${id}`, 'The list names this visit and it has no entries. Export it anew.');
    const wanted = new Set(
      this.#manifest.visits.flatMap(({ photos, trees }) => [
        ...photos.map((name) => `photos/${name}`),
        ...trees.map((hash) => `trees/${hash}`),
      ]),
    );
    const there = new Set([...places.values()].flatMap(sharedName));
    for (const name of there)
      if (!wanted.has(name))
        this.#say('file-not-asked-for', name, 'No visit of the file has this photo or tree. Export it anew.');
    for (const name of wanted)
      if (!there.has(name))
        this.#say('file-missing', name, 'A visit of the list has this, and it is not in the zip. Export it anew.');
    return places;
  }

  /**
   * Looks at one file; called in the order of the paths.
   *
   * @param text    its bytes as text, null when they are no UTF-8.
   * @param sha256  of its bytes, hex.
   */
  file(path: string, place: Place, bytes: Uint8Array, text: string | null, sha256: string): void {
    const listed = this.#listed.get(path);
    if (listed?.sha256 !== sha256 || listed.bytes !== bytes.length) {
      this.#say(
        'wrong-hash',
        path,
        'The content is not what the list says (SHA-256): the file was changed or damaged on the way. Copy or export it anew.',
      );
      return;
    }
    if (place.kind !== 'tree') this.#endTree();
    if (!isVisitLog(place) || place.id !== this.#visit?.id) this.#endVisit();
    if (place.kind === 'photo') this.#photo(path, place.name, bytes, sha256);
    else if (text === null) this.#say('not-text', path, 'The file is not text in UTF-8. Export it anew.');
    else this.#text(path, place, text);
  }

  /** Says what only shows when every file has been looked at. */
  done(): void {
    this.#endTree();
    this.#endVisit();
    if (this.#whole) return;
    for (const coach of this.#coaches)
      if (!this.#coachesNamed.has(coach))
        this.#say('foreign-id', `coaches/${coach}`, 'The visit does not speak of this coach. Export it anew.');
  }

  #photo(path: string, name: string, bytes: Uint8Array, sha256: string): void {
    if (name.split('.')[0] !== sha256) {
      this.#say(
        'wrong-hash',
        path,
        'A photo is named by the SHA-256 of its content; this one is another. Export anew.',
      );
      return;
    }
    const fault = pictureFault(bytes, name.split('.').at(-1) ?? '');
    // A photo that was taken in once and lies on the disk comes back; it is shown as a picture or not at all.
    if (fault) this.#say(fault.code, path, fault.message, this.#whole && fault.code === 'wrong-type');
    else {
      const more = this.#tools.photoFault(name, bytes);
      if (more !== null)
        this.#say(
          'photo-not-clean',
          path,
          `The photo is not as Droplight stores one: ${more}. It may say where, when and by whom it was taken. Take it out of the visit where it was made, add it there again as a photo, and export the visit anew.`,
          this.#whole,
        );
    }
    this.#photos.add(name);
  }

  #text(path: string, place: Place, text: string): void {
    if (place.kind === 'log') {
      const { records, problems } = readLogLines(path, text, { lenient: this.#whole, of: place.of });
      this.problems.push(...problems);
      if (place.of === 'coaches') this.#coaches.add(place.id);
      else if (place.of === 'visits') {
        this.#visit ??= { id: place.id, records: [] };
        this.#visit.records.push(...records);
      }
      return;
    }
    if (text.length > TEXT_BYTES && place.kind !== 'practice') {
      this.#say('file-too-large', path, `The text has ${text.length} letters; at most ${TEXT_BYTES} are taken.`);
      return;
    }
    if (place.kind === 'tree') {
      if (place.hash !== this.#tree?.hash) this.#endTree();
      this.#tree ??= { hash: place.hash, files: new Map() };
      this.#tree.files.set(place.file, text);
      return;
    }
    const part = path.endsWith('.svg') ? unsafeDrawing(text) : null;
    if (part) this.problems.push({ ...packError('unsafe-drawing', path, part.message), line: part.line });
  }

  #endTree(): void {
    const tree = this.#tree;
    if (!tree) return;
    this.#tree = null;
    this.#trees.add(tree.hash);
    const known = this.#tools.known.has(tree.hash);
    for (const problem of keptTreeProblems(tree.hash, tree.files, { hashOf: this.#tools.hashOf, known }))
      this.problems.push(
        this.#whole && problem.code === 'tree-not-readable' ? { ...problem, level: 'warning' } : problem,
      );
  }

  #endVisit(): void {
    const visit = this.#visit;
    if (!visit) return;
    this.#visit = null;
    const listed = this.#manifest.visits.find((each) => each.visit === visit.id);
    this.problems.push(
      ...visitProblems(
        visit.id,
        visit.records,
        {
          trees: new Set([...this.#tools.known, ...(listed?.trees ?? []).filter((hash) => this.#trees.has(hash))]),
          photos: new Set((listed?.photos ?? []).filter((name) => this.#photos.has(name))),
        },
        this.#whole,
      ),
    );
    for (const { coachId } of visit.records as readonly { readonly coachId?: unknown }[])
      if (typeof coachId === 'string') this.#coachesNamed.add(coachId);
  }

  #say(code: string, file: string, message: string, remark = false): void {
    this.problems.push({ ...packError(code, file, message), level: remark ? 'warning' : 'error' });
  }
}

function isVisitLog(place: Place): place is Extract<Place, { kind: 'log' }> {
  return place.kind === 'log' && place.of === 'visits';
}

/** Name of what several visits of a backup share. */
function sharedName(place: Place): string[] {
  if (place.kind === 'photo') return [`photos/${place.name}`];
  return place.kind === 'tree' ? [`trees/${place.hash}`] : [];
}
