export interface Held {
  readonly width: number;
  readonly height: number;
  /** Font size of the root, px. */
  readonly text: number;
  readonly hand: 'left' | 'right';
  readonly keyboard: boolean;
}

/** What a screen is held to; runs inside the page. One sentence for each thing that is wrong. */
export function breaches({ width, height, text, hand, keyboard }: Held): string[] {
  document.documentElement.dataset['hand'] = hand;
  document.documentElement.style.fontSize = text === 16 ? '' : `${text}px`;
  if (!keyboard)
    for (const scrolled of [document.documentElement, ...document.querySelectorAll('.body')]) scrolled.scrollTop = 0;
  const LEAST = 48;
  const APART = 8;
  const found: string[] = [];
  const say = (what: string, element: Element) => found.push(`${what}: ${nameOf(element)}`);

  const shown = (element: Element) =>
    element.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
    !element.closest('.unseen') &&
    getComputedStyle(element).clipPath === 'none';
  const sheet = document.querySelector('dialog[open]'); // what is behind it cannot be reached
  const all = (selector: string) => [...(sheet ?? document).querySelectorAll(selector)].filter(shown);

  function nameOf(element: Element): string {
    const words = (element.getAttribute('aria-label') ?? element.textContent ?? '').trim().slice(0, 40);
    const { left, top, width, height } = element.getBoundingClientRect();
    const name = element.getAttribute('name');
    return `${element.localName}.${element.getAttribute('class') ?? ''}${name ? `[${name}]` : ''} "${words}" ${[left, top, width, height].map(Math.round)}`;
  }

  /** What a finger meets: a radio is its row, all else is itself. */
  function targets(): Element[] {
    const controls = all('button, a[href], input, select, textarea, summary, [role=button], [tabindex="0"]');
    const met = controls.map((control) =>
      control.matches('[type=radio], [type=checkbox], [type=file]') ? (control.closest('label') ?? control) : control,
    );
    return [...new Set(met)];
  }

  /** The part of an element that its scrolling ancestors leave in sight, and the fixed or sticky bar that it is in. */
  function inSight(element: Element) {
    let { left, top, right, bottom } = element.getBoundingClientRect();
    let bar: Element | null = null;
    for (let at: Element | null = element; at && at !== document.body; at = at.parentElement) {
      const { display, overflowX, overflowY, position } = getComputedStyle(at);
      if (position === 'fixed' || position === 'sticky') bar ??= at;
      if (at === element || display === 'contents' || (overflowX === 'visible' && overflowY === 'visible')) continue; // without a box nothing is cut
      const box = at.getBoundingClientRect();
      left = Math.max(left, box.left);
      top = Math.max(top, box.top);
      right = Math.min(right, box.right);
      bottom = Math.min(bottom, box.bottom);
    }
    return { element, left, top, right, bottom, bar };
  }

  function checkTargets() {
    const met = targets();
    for (const target of met) {
      const { width, height } = target.getBoundingClientRect();
      if (width < LEAST - 0.5 || height < LEAST - 0.5) say('smaller than 48 px', target);
    }
    const boxes = met.map(inSight).filter(({ left, top, right, bottom }) => right - left > 1 && bottom - top > 1);
    boxes.forEach((one, i) =>
      boxes.slice(i + 1).forEach((other) => {
        if (one.bar !== other.bar || one.element.contains(other.element) || other.element.contains(one.element)) return;
        const aside = Math.max(one.left, other.left) - Math.min(one.right, other.right);
        const below = Math.max(one.top, other.top) - Math.min(one.bottom, other.bottom);
        if (Math.max(aside, below) < APART - 0.5) say(`nearer than 8 px to ${nameOf(other.element)}`, one.element);
      }),
    );
  }

  function checkMain() {
    const mains = all('.main');
    if (mains.length > 1) found.push(`${mains.length} main actions: ${mains.map(nameOf).join(', ')}`);
    const main = mains[0] ?? all('.actions > .way-on')[0]; // or what is touched in its place, as a whole
    const run = sheet ? null : document.querySelector('.run:not(.scanner)');
    if (run && !main) found.push('a step without a main action');
    if (!run || !main) return;
    const box = main.getBoundingClientRect();
    if (box.bottom > height + 0.5) say('main action below the screen', main);
    if (!keyboard && box.top + box.height / 2 < height / 2) say('main action in the upper half', main);
    if (box.height < 63.5) say('main action lower than 64 px', main);
    const said = run.querySelector('.say');
    if (!said || !shown(said) || keyboard) return;
    const { top, bottom } = inSight(said);
    if (bottom - top < 20 || top > height - 20) say('the instruction is out of sight', said);
  }

  /** The action for the thumb stands on the side of the hand. */
  function checkHand() {
    for (const main of all('.row > .main, .row > .plus')) {
      const box = main.getBoundingClientRect();
      for (const other of [...main.parentElement!.children].filter((each) => each !== main && shown(each))) {
        const beside = other.getBoundingClientRect();
        if (beside.bottom <= box.top || beside.top >= box.bottom) continue;
        if (hand === 'left' ? box.left > beside.left : box.left < beside.left) say('not on the side of the hand', main);
      }
    }
  }

  function checkText() {
    if (document.documentElement.scrollWidth > width) {
      const wide = all('body *').filter((each) => each.getBoundingClientRect().right > width + 1 && !inScroller(each));
      found.push(`scrolls sideways to ${document.documentElement.scrollWidth}: ${wide.slice(0, 1).map(nameOf)}`);
    }
    for (const each of document.querySelectorAll('body *')) {
      const [wide, high] = [each.scrollWidth > each.clientWidth + 1, each.scrollHeight > each.clientHeight + 1];
      if ((!wide && !high) || each instanceof SVGElement || each.clientWidth < 2) continue;
      const { overflowX, overflowY } = getComputedStyle(each);
      const closed = (flow: string) => flow === 'hidden' || flow === 'clip';
      const control = each.matches('button, label.choice, .chip, .tabs a');
      if (each.matches('input:not([inputmode=decimal], [inputmode=numeric])') || !shown(each)) continue; // words scroll in their box
      if ((closed(overflowX) || control) && wide) say('text cut at the side', each);
      if ((closed(overflowY) || control) && high) say('text cut below', each);
    }
  }

  /** On the cards of the Bench no word is broken. */
  function checkWords() {
    for (const each of all('.tasks .card b, .tasks .card span'))
      for (const { index, 0: word } of each.textContent!.matchAll(/\S+/g)) {
        const range = document.createRange();
        range.setStart(each.firstChild!, index);
        range.setEnd(each.firstChild!, index + word.length);
        if (new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size > 1)
          say(`broken: ${word}`, each);
      }
  }

  function inScroller(element: Element): boolean {
    for (let at = element.parentElement; at; at = at.parentElement)
      if (['auto', 'scroll', 'hidden'].includes(getComputedStyle(at).overflowX)) return true;
    return false;
  }

  /** With a keyboard up, the field that is typed in and the main action can both be touched; a sheet scrolls to its own. */
  function checkKeyboard() {
    const field = document.activeElement!;
    if (field === document.body) return; // a field that is not shown
    field.scrollIntoView({ block: 'nearest' }); // as a phone does
    for (const each of [field, ...(sheet ? [] : all('.run .main'))]) {
      const { left, top, width: w, height: h } = each.getBoundingClientRect();
      const there = [0.1, 0.5, 0.9].every((share) => {
        const hit = document.elementFromPoint(left + w / 2, top + h * share);
        return hit && (each.contains(hit) || hit.contains(each));
      });
      if (!there) say(`the keyboard (${width}×${height} left) covers`, each);
    }
  }

  checkMain();
  if (keyboard) checkKeyboard();
  else {
    checkTargets();
    checkHand();
    checkText();
    checkWords();
  }
  document.documentElement.style.fontSize = '';
  return found;
}

/** What a screen is held to for those who use no eyes, no finger or want no motion; runs inside the page. */
export function unheard(): string[] {
  const found: string[] = [];
  for (const each of document.querySelectorAll('svg, canvas, img, video')) {
    const named = each.getAttribute('aria-label') || each.getAttribute('aria-labelledby') || each.getAttribute('alt');
    const quiet = each.closest('[aria-hidden=true], [aria-label]') !== null;
    if (!named && !quiet) found.push(`a picture without a name: ${each.outerHTML.slice(0, 80)}`);
  }
  for (const each of document.querySelectorAll('body *')) {
    const { transitionDuration, animationName } = getComputedStyle(each);
    if (transitionDuration.split(', ').some((time) => parseFloat(time) > 0.01) || animationName !== 'none')
      found.push(`moves for those who want no motion: ${each.localName}.${each.getAttribute('class')}`);
    const tab = each.getAttribute('tabindex');
    if (tab !== null && Number(tab) > 0) found.push(`out of the order of the page: ${each.outerHTML.slice(0, 80)}`);
  }
  for (const count of document.querySelectorAll('.count'))
    if (
      !document.querySelector('[role=status], [aria-live]') ||
      count.closest('button')?.querySelector('[role=status]')
    )
      found.push('a count that no live region tells');
  return found;
}
