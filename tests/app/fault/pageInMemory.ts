/** As much of a browser's page as the app is drawn into: elements with their attributes, text and listeners, an address and a history. */
class Node {
  parentNode: Node | null = null;
  childNodes: Node[] = [];
  data = '';
  readonly nodeType: number;
  readonly localName: string;
  readonly ownerDocument: unknown = null;
  constructor(nodeType: number, localName: string) {
    this.nodeType = nodeType;
    this.localName = localName;
  }
  get firstChild(): Node | null {
    return this.childNodes[0] ?? null;
  }
  get nextSibling(): Node | null {
    const all = this.parentNode?.childNodes ?? [];
    return all[all.indexOf(this) + 1] ?? null;
  }
  get parentElement() {
    return this.parentNode;
  }
  get isConnected() {
    return true;
  }
  get textContent(): string {
    const texts: string[] = [];
    const read = (node: Node) => (node.nodeType === 3 ? void texts.push(node.data) : node.childNodes.forEach(read));
    read(this);
    return texts.join(' ');
  }
  set textContent(text: string) {
    this.childNodes = [];
    if (text) this.appendChild(new Text(text));
  }
  insertBefore(node: Node, before: Node | null) {
    node.remove();
    node.parentNode = this;
    const at = before ? this.childNodes.indexOf(before) : -1;
    if (at < 0) this.childNodes.push(node);
    else this.childNodes.splice(at, 0, node);
    return node;
  }
  appendChild(node: Node) {
    return this.insertBefore(node, null);
  }
  append(...nodes: Node[]) {
    nodes.forEach((node) => this.appendChild(node));
  }
  removeChild(node: Node) {
    this.childNodes = this.childNodes.filter((one) => one !== node);
    node.parentNode = null;
    return node;
  }
  remove() {
    this.parentNode?.removeChild(this);
  }
  contains(node: Node | null): boolean {
    return node === this || this.childNodes.some((one) => one.contains(node));
  }
  /** Whether it, or something in it, says that it is not there yet. */
  get isBusy(): boolean {
    return this.childNodes.some((one) => one.isBusy);
  }
}

class Text extends Node {
  constructor(text: string) {
    super(3, '#text');
    this.data = text;
  }
}

/** An element. What it is asked about its place on a screen is answered as for one of 360 × 640 px. */
export class Element extends Node {
  readonly attributes: { name: string; value: string }[] = [];
  readonly style: Record<string, unknown> = {
    setProperty: () => {},
    getPropertyValue: () => '',
    removeProperty: () => {},
  };
  readonly dataset: Record<string, string> = {};
  readonly classList = { add: () => {}, remove: () => {}, toggle: () => false, contains: () => false };
  readonly namespaceURI: string;
  readonly clientWidth = 360;
  readonly clientHeight = 640;
  readonly offsetHeight = 40;
  readonly offsetWidth = 360;
  constructor(localName: string, namespaceURI: string) {
    super(1, localName);
    this.namespaceURI = namespaceURI;
  }
  setAttribute(name: string, value: unknown) {
    this.removeAttribute(name);
    this.attributes.push({ name, value: String(value) });
  }
  override get isBusy(): boolean {
    return this.getAttribute('aria-busy') === 'true' || super.isBusy;
  }
  getAttribute(name: string) {
    return this.attributes.find((one) => one.name === name)?.value ?? null;
  }
  removeAttribute(name: string) {
    const at = this.attributes.findIndex((one) => one.name === name);
    if (at >= 0) this.attributes.splice(at, 1);
  }
  getBoundingClientRect = () => ({ left: 0, top: 0, right: 360, bottom: 640, x: 0, y: 0, width: 360, height: 640 });
  querySelector = () => null;
  querySelectorAll = () => [];
  closest = () => null;
  addEventListener() {}
  removeEventListener() {}
  focus() {}
  blur() {}
  click() {}
  showModal() {}
  close() {}
  scrollIntoView() {}
  scrollTo() {}
  setPointerCapture() {}
  /** Letters are as wide as those of most fonts on average. */
  getContext = () => ({ font: '', measureText: (text: string) => ({ width: 55 * [...text].length }) });
}

const HTML = 'http://www.w3.org/1999/xhtml';
const root = new Element('div', HTML);
const documentElement = new Element('html', HTML);
const page = {
  nodeType: 9,
  documentElement,
  body: new Element('body', HTML),
  head: new Element('head', HTML),
  activeElement: null,
  visibilityState: 'visible',
  hidden: false,
  baseURI: 'https://bench.test/',
  adoptedStyleSheets: [],
  fonts: { load: async () => [], ready: Promise.resolve() },
  createElement: (name: string) => new Element(name, HTML),
  createElementNS: (space: string, name: string) => new Element(name, space),
  createTextNode: (text: string) => new Text(text),
  querySelector: () => null,
  querySelectorAll: () => [],
  getElementById: () => null,
  addEventListener: () => {},
  removeEventListener: () => {},
};

/** A history without a way back: a page is only ever gone to. */
const past = {
  state: null as unknown,
  length: 1,
  pushState(state: unknown, _: string, hash?: string) {
    past.state = state;
    if (hash) address.hash = hash;
  },
  replaceState(state: unknown, _: string, hash?: string) {
    past.pushState(state, _, hash);
  },
  go: () => {},
  back: () => {},
};
const address = {
  hash: '',
  href: 'https://bench.test/',
  origin: 'https://bench.test',
  pathname: '/',
  reload: () => {},
};

const media = () => ({ matches: false, addEventListener: () => {}, removeEventListener: () => {} });
class Observer {
  observe() {}
  unobserve() {}
  disconnect() {}
}
const kept = new Map<string, string>();
const followers = new Set<() => void>();

/** Puts another address into the address bar, as a link from elsewhere or a person does. */
export function visit(hash: string): void {
  address.hash = hash;
  followers.forEach((follow) => follow());
}

/** What was there before, by name: other tests of the same thread have no page. */
const before = new Map<string, PropertyDescriptor | undefined>();

/** Takes the page away again. */
export function closePageInMemory(): void {
  for (const [name, descriptor] of before)
    if (descriptor) Object.defineProperty(globalThis, name, descriptor);
    else delete (globalThis as Record<string, unknown>)[name];
}

/** Puts the page where the modules of the app look for one when they are loaded; they have to be loaded after it. */
export function openPageInMemory() {
  const globals: Record<string, unknown> = {
    document: page,
    location: address,
    history: past,
    navigator: { language: 'en-US', languages: ['en-US'], onLine: true, userAgent: 'in memory', maxTouchPoints: 5 },
    window: globalThis,
    addEventListener: (type: string, then: () => void) => void (type === 'hashchange' && followers.add(then)),
    removeEventListener: (_: string, then: () => void) => void followers.delete(then),
    dispatchEvent: () => true,
    scrollTo: () => {},
    matchMedia: media,
    getComputedStyle: () => ({ getPropertyValue: () => '', fontSize: '16px' }),
    HTMLElement: Element,
    ResizeObserver: Observer,
    IntersectionObserver: Observer,
    localStorage: {
      getItem: (name: string) => kept.get(name) ?? null,
      setItem: (name: string, text: string) => void kept.set(name, text),
      removeItem: (name: string) => void kept.delete(name),
    },
    innerWidth: 360,
    innerHeight: 640,
    devicePixelRatio: 2,
    CSS: { escape: (text: string) => text, supports: () => true },
    CSSStyleSheet: class {
      replaceSync() {}
    },
  };
  for (const [name, value] of Object.entries(globals)) {
    before.set(name, Object.getOwnPropertyDescriptor(globalThis, name));
    Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
  }
  return root;
}
