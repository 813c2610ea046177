import { Refusal } from '../../core/text/refusal';
import type { Parcel, Summary } from '../union/summary';
import { messageFrom, messageOf, PROTOCOL, type Introduction, type Message } from './messages';

/** Carries messages between two devices, in order and whole. */
export interface Wire {
  /** Sends a message; resolves when there is room for the next one. Rejects when the wire is broken. */
  send(message: Uint8Array): Promise<void>;
  /** Called with each message; those that came before are handed over at once. */
  listen(hear: (message: Uint8Array) => void): void;
  /** Resolves when nothing can be sent any more: with what was not as it was sent, null where it just ended. */
  readonly ended: Promise<Refusal | null>;
  close(): void;
}

/** What a device brings to an exchange. */
export interface Side {
  readonly introduction: Introduction;
  /** What it holds, in few words. */
  summary(): Promise<Summary>;
  /** What it holds and the other lacks, in parcels that may be joined one by one. */
  lacking(theirs: Summary): Promise<readonly Parcel[]>;
  /** Stores a parcel beside what is here: all of it or nothing, and the same however often. */
  join(parcel: Parcel): Promise<void>;
  /** Draws another id for this device: the other has the same. */
  beAnother(): Promise<void>;
}

/** How far an exchange has come, in items: records and steps of runs. */
export interface Progress {
  readonly other: string;
  readonly came: number;
  readonly toCome: number;
  readonly went: number;
  readonly toGo: number;
}

/** How an exchange ended, and the ids of the records that came and went until then. */
export interface Outcome {
  readonly end: 'equal' | 'changing' | 'stopped here' | 'stopped there' | 'broke' | 'refused';
  /** Why, where it was refused. */
  readonly why?: Refusal;
  readonly other: string;
  readonly came: readonly string[];
  readonly went: readonly string[];
}

export interface Asked {
  readonly wire: Wire;
  readonly side: Side;
  readonly progress: (now: Progress) => void;
  readonly stop: AbortSignal;
}

const AHEAD = 4; // parcels on their way that the other has not stored yet (our choice)
const ROUNDS = 5; // our choice: two do, unless somebody works meanwhile

/**
 * Two devices tell each other what they hold, and each sends what the other lacks, until both hold the same. Every parcel is
 * stored before it is answered, so that after a break nothing that came is sent again.
 */
export function exchange(asked: Asked): Promise<Outcome> {
  return new Exchange(asked).whole();
}

/** One exchange under way. */
class Exchange {
  readonly #asked: Asked;
  #end!: (how: Pick<Outcome, 'end' | 'why'>) => void;
  readonly #ended = new Promise<Pick<Outcome, 'end' | 'why'>>((resolve) => (this.#end = resolve));
  #tellParted!: () => void;
  readonly #parted = new Promise<void>((resolve) => (this.#tellParted = resolve));
  /** Messages are taken one after the other. */
  #taking: Promise<void> = Promise.resolve();
  #other = '';
  #round = 0;
  readonly #came = new Set<string>();
  readonly #went = new Set<string>();
  /** In items, over all rounds. */
  #items = { came: 0, toCome: 0, went: 0, toGo: 0 };
  /** Parcels of this round: null until it is known how many. */
  #coming: number | null = null;
  #going: number | null = null;
  /** Was there anything to send in this round, on either side. */
  #differs = false;
  /** Parcels that went and are not stored there yet. */
  readonly #open: Parcel[] = [];
  #room: () => void = () => {};

  constructor(asked: Asked) {
    this.#asked = asked;
  }

  async whole(): Promise<Outcome> {
    const { wire, side, stop } = this.#asked;
    wire.listen((message) => {
      this.#taking = this.#taking.then(() => this.#take(message)).catch((error: unknown) => this.#fail(error));
    });
    void wire.ended.then((why) => this.#taking.then(() => this.#end(why ? { end: 'refused', why } : { end: 'broke' })));
    stop.addEventListener('abort', () => this.#leave('stopped here'));
    if (stop.aborted) this.#leave('stopped here');
    else this.#send({ is: 'hello', hello: side.introduction });
    const how = await this.#ended;
    if (how.end === 'equal' || how.end === 'changing') await this.#part();
    await this.#taking; // what came is stored whole
    return { ...how, other: this.#other, came: [...this.#came], went: [...this.#went] };
  }

  #send(message: Message): void {
    this.#asked.wire.send(messageOf(message)).catch(() => this.#end({ end: 'broke' }));
  }

  /** Ends it here, and tells the other. */
  #leave(end: Outcome['end'], why?: Refusal): void {
    const { wire } = this.#asked;
    wire
      .send(messageOf({ is: 'stop' }))
      .catch(() => {})
      .then(() => setTimeout(() => wire.close(), 500)); // ms for the last word to arrive (our choice)
    this.#end(why ? { end, why } : { end });
  }

  /** Both have all: each waits until the other knows it too, but not for long. */
  #part(): Promise<unknown> {
    this.#send({ is: 'stop' });
    const long = new Promise((resolve) => setTimeout(resolve, 2000)); // ms, our choice
    return Promise.race([this.#parted, this.#asked.wire.ended, long]);
  }

  #fail(error: unknown): void {
    const why =
      error instanceof Refusal
        ? error
        : new Refusal('What came could not be stored here: {why}', { why: String(error) });
    this.#leave('refused', why);
  }

  async #take(bytes: Uint8Array): Promise<void> {
    const message = messageFrom(bytes);
    if (message.is === 'hello') return this.#meet(message.hello);
    if (message.is === 'summary') return this.#answer(message.summary);
    if (message.is === 'plan') {
      this.#coming = message.parcels;
      this.#items.toCome += message.items;
      this.#differs ||= message.parcels > 0;
    }
    if (message.is === 'parcel') await this.#store(message.parcel);
    if (message.is === 'stored') this.#stored();
    if (message.is === 'stop') {
      this.#tellParted();
      return this.#end({ end: 'stopped there' });
    }
    await this.#go();
  }

  async #meet(theirs: Introduction): Promise<void> {
    this.#other = theirs.name;
    if (theirs.device === this.#asked.side.introduction.device) await this.#asked.side.beAnother();
    const why = whyNotTogether(this.#asked.side.introduction, theirs);
    if (why) return this.#leave('refused', why);
    await this.#begin();
  }

  async #begin(): Promise<void> {
    this.#round++;
    this.#send({ is: 'summary', summary: await this.#asked.side.summary() });
  }

  async #answer(theirs: Summary): Promise<void> {
    const parcels = await this.#asked.side.lacking(theirs);
    const items = parcels.reduce((sum, parcel) => sum + itemsIn(parcel), 0);
    this.#going = parcels.length;
    this.#items.toGo += items;
    this.#differs ||= parcels.length > 0;
    this.#send({ is: 'plan', parcels: parcels.length, items });
    void this.#sendAll(parcels);
    await this.#go();
  }

  async #sendAll(parcels: readonly Parcel[]): Promise<void> {
    for (const parcel of parcels) {
      if (this.#open.length >= AHEAD) await new Promise<void>((room) => (this.#room = room));
      this.#open.push(parcel);
      this.#send({ is: 'parcel', parcel });
    }
  }

  async #store(parcel: Parcel): Promise<void> {
    await this.#asked.side.join(parcel);
    for (const { id } of parcel.records) this.#came.add(id);
    this.#items.came += itemsIn(parcel);
    if (this.#coming !== null) this.#coming--;
    this.#send({ is: 'stored' });
  }

  #stored(): void {
    const parcel = this.#open.shift();
    if (!parcel || this.#going === null) return;
    for (const { id } of parcel.records) this.#went.add(id);
    this.#items.went += itemsIn(parcel);
    this.#going--;
    this.#room();
  }

  /** Tells how far it is; begins the next round, or ends, when this one is done. */
  async #go(): Promise<void> {
    this.#asked.progress({ other: this.#other, ...this.#items });
    if (this.#coming !== 0 || this.#going !== 0) return;
    if (!this.#differs) return this.#end({ end: 'equal' });
    if (this.#round === ROUNDS) return this.#end({ end: 'changing' });
    [this.#coming, this.#going, this.#differs] = [null, null, false];
    await this.#begin();
  }
}

function itemsIn({ records, events }: Parcel): number {
  return records.length + events.length;
}

/** Why two devices cannot exchange: one writes records that the other would not understand. */
function whyNotTogether(here: Introduction, there: Introduction): Refusal | null {
  const kinds = new Set([...Object.keys(here.kinds), ...Object.keys(there.kinds)]);
  const older = (one: Introduction, other: Introduction) =>
    one.protocol < other.protocol || [...kinds].some((kind) => (one.kinds[kind] ?? 0) < (other.kinds[kind] ?? 0));
  if (here.device === there.device)
    return new Refusal(
      'One device was made as a copy of the other, and Minim took both for one. That is mended: pair again.',
    );
  if (there.protocol === PROTOCOL && !older(here, there) && !older(there, here)) return null;
  return older(here, there)
    ? new Refusal('The other device has a newer Minim. Open Minim here with a network, let it update, then pair again.')
    : new Refusal(
        'The other device has an older Minim. Open Minim there with a network, let it update, then pair again.',
      );
}
