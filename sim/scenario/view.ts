/**
 * A scenario file as its sections see it: for every key of the tree what stands there, with places for
 * problems, warnings and the defaults taken. A value that was refused reads as absent, so that
 * checks can go on over a file that is partly wrong and every problem is found at once.
 */
import {
  type Choice,
  isQuantity,
  type Key,
  type Keys,
  type Leaf,
  type List,
  leafValue,
  type Presence,
  type Section,
  type Text,
} from './key.ts';
import { below, join } from './keyPath.ts';
import { type Quantity, quantityToText } from './quantity.ts';

/** A default that was taken, in the words a file would use. */
export interface DefaultUsed {
  path: string;
  value: string;
  /** Where the default comes from. */
  why: string;
}

/** Something valid but seldom meant. */
export interface ScenarioWarning {
  path: string;
  message: string;
}

/** A problem between values, before its place in the file is known. */
export interface Problem extends ScenarioWarning {
  remedy: string;
  limit?: string;
}

/** What checks and defaults have told of a file, in order. */
export class Told {
  readonly defaultsUsed: DefaultUsed[] = [];
  readonly warnings: ScenarioWarning[] = [];
  readonly problems: Problem[] = [];
  /** Every place seen anew, in the order of the tree; sections before their keys. */
  readonly places: Place[] = [];
  /** Views by what stands there, so that the same data in another file is seen by the same view. */
  readonly views = new WeakMap<object, AnyView>();
  /** Views of what is absent, by path. */
  readonly absent = new Map<string, AnyView>();

  /** Forgets what was told, for the next file; views are kept. */
  clear(): void {
    for (const list of [this.defaultsUsed, this.warnings, this.problems, this.places]) {
      list.length = 0;
    }
  }
}

/** A key of the file, and what stands there. Fields are declared, not defined: that is faster. */
export class Place<K extends Key = Key> {
  declare readonly key: K;
  declare readonly data: unknown;
  declare readonly path: string;
  declare private readonly told: Told;

  constructor(key: K, data: unknown, path: string, told: Told) {
    this.key = key;
    this.data = data;
    this.path = path;
    this.told = told;
    told.places.push(this);
  }

  /** Whether anything stands here, right or wrong. */
  get present(): boolean {
    return this.data !== undefined;
  }

  warn(message: string): void {
    this.told.warnings.push({ path: this.path, message });
  }

  problem(message: string, remedy: string, limit?: string): void {
    const { path } = this;
    this.told.problems.push({ path, message, remedy, ...(limit !== undefined && { limit }) });
  }

  /** A problem of a key below. */
  problemAt(name: string, message: string, remedy: string): void {
    this.told.problems.push({ path: join(this.path, name), message, remedy });
  }

  /** Lists a default. */
  note(value: string, why: string): void {
    this.told.defaultsUsed.push({ path: this.path, value, why });
  }
}

export class LeafPlace<P extends Presence = Presence> extends Place<Leaf> {
  /** The default that `take` has given. */
  declare taken?: number;

  /** The quantity that is given, or undefined where it is absent or wrong. */
  get quantity(): Quantity | undefined {
    return isQuantity(this.data) ? this.data : undefined;
  }

  /** The number that is given, or undefined where it is absent or wrong. */
  get given(): number | undefined {
    return this.quantity?.value;
  }

  /** The number that is given or else the default value; undefined where there is neither. */
  get assumed(): P extends 'value' ? number : number | undefined {
    return (this.given ?? this.usualDefault()) as number;
  }

  private usualDefault(): number | undefined {
    const text = this.key.absent?.value;
    if (text === undefined) return undefined;
    const known = DEFAULTS.get(this.key) ?? leafValue(text, this.key);
    DEFAULTS.set(this.key, known);
    return known;
  }

  /** The number that is given, or the default, which is then listed; a default by rule needs its rule. */
  take(...[rule]: Rule<P>): number {
    const { given, key } = this;
    if (given !== undefined) return given;
    const value = this.usualDefault() ?? rule?.();
    if (value === undefined) throw new Error(`scenario: ${this.path} has no value`);
    return this.takeAs(value, key.absent!.why, key.absent!.value);
  }

  /** Takes a default that the file asks for elsewhere. */
  takeAs(value: number, why: string, text = quantityToText(value, this.key.dimension)): number {
    this.taken = value;
    this.note(text, why);
    return value;
  }
}

/** A leaf without a default can only be asked what is given. */
type Rule<P> = P extends 'rule'
  ? [rule: () => number]
  : P extends 'open'
    ? [nothing: never]
    : [nothing?: undefined];

const DEFAULTS = new WeakMap<Leaf, number>();

export class ChoicePlace<W extends string = string> extends Place<Choice<W>> {
  /** The default that `take` has given. */
  declare taken?: W;

  get given(): W | undefined {
    return this.key.words.find((word) => word === this.data);
  }

  /** The word that is given, or the default, which is then listed. */
  take(): W {
    const { absent } = this.key;
    if (this.given !== undefined) return this.given;
    if (absent === undefined) throw new Error(`scenario: ${this.path} has no value`);
    this.taken = absent.value;
    this.note(absent.value, absent.why);
    return absent.value;
  }
}

export class TextPlace extends Place<Text> {
  get given(): string | undefined {
    return typeof this.data === 'string' ? this.data : undefined;
  }
}

export class ListPlace<R extends Key = Key> extends Place<List<R>> {
  /** What the rows see; none where the list is absent or wrong. */
  declare rows: readonly ViewOf<R>[];
}

/** A section: its own place under `here`, its keys by name. */
export type SectionView<K extends Keys> = { readonly here: Place<Section> } & {
  readonly [N in keyof K]: ViewOf<K[N]>;
};

export type ViewOf<K> =
  K extends Leaf<infer P>
    ? LeafPlace<P>
    : K extends Choice<infer W>
      ? ChoicePlace<W>
      : K extends Text
        ? TextPlace
        : K extends List<infer R>
          ? ListPlace<R>
          : K extends Section<infer S>
            ? SectionView<S>
            : never;

/** The view of a tree that the schema has read. */
export function viewOf<K extends Key>(key: K, data: unknown, told: Told, path = ''): ViewOf<K> {
  return view(key, data, told, path) as ViewOf<K>;
}

export type AnyView = Place | SectionSeen;
type SectionSeen = { here: Place } & Record<string, unknown>;

function view(key: Key, data: unknown, told: Told, path: string): AnyView {
  if (key.kind === 'leaf') return new LeafPlace(key, data, path, told);
  if (key.kind === 'choice') return new ChoicePlace(key, data, path, told);
  if (key.kind === 'text') return new TextPlace(key, data, path, told);
  if (data instanceof Object) return keptView(told.views, data, key, data, told, path);
  if (data === undefined) return keptView(told.absent, path, key, data, told, path);
  return freshView(key, data, told, path);
}

function keptView<I>(
  kept: { get(id: I): AnyView | undefined; set(id: I, view: AnyView): unknown },
  id: I,
  ...[key, data, told, path]: Parameters<typeof freshView>
): AnyView {
  const known = kept.get(id) ?? freshView(key, data, told, path);
  kept.set(id, known);
  return known;
}

function freshView(key: List | Section, data: unknown, told: Told, path: string): AnyView {
  if (key.kind === 'list') {
    const place = new ListPlace(key, data, path, told);
    const rows = Array.isArray(data) ? data : [];
    place.rows = rows.map((row, i) => view(key.row, row, told, `${path}.${i}`)) as never;
    return place;
  }
  const seen: SectionSeen = { here: new Place(key, data, path, told) };
  for (const name in key.keys) {
    seen[name] = view(key.keys[name]!, below(data, name), told, join(path, name));
  }
  return seen;
}

/** What is given or taken at every key of a section that has a value or a default, in their order. */
export function takeAll<V extends object>(view: V): Taken<V> {
  const places = Object.entries(view).filter(([name]) => name !== 'here');
  return Object.fromEntries(places.map(([name, place]) => [name, place.take()])) as Taken<V>;
}

type Taken<V> = {
  -readonly [N in keyof V as N extends 'here' ? never : N]: V[N] extends { take(): infer T }
    ? T
    : never;
};

/** Numbers of a column; a cell that is wrong reads as NaN. */
export function numbers(cells: readonly LeafPlace[]): number[] {
  return cells.map((cell) => cell.given ?? Number.NaN);
}
