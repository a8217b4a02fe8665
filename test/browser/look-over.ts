import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** WCAG 2.2, levels A, AA and AAA (contrast 7:1), as far as axe-core can tell from a page. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag2aaa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What axe-core finds wrong with the page as it stands, one line a finding. @param more rules of its best practices */
export async function accessFaults(page: Page, ...more: readonly string[]): Promise<readonly string[]> {
  // Through the debugging protocol, which the page's content security policy does not hold back.
  await page.evaluate(axe.source);
  return page.evaluate(
    async ({ tags, named }) => {
      const { axe } = globalThis as unknown as {
        axe: {
          run(
            options: object,
          ): Promise<{ violations: { id: string; nodes: { target: string[]; failureSummary: string }[] }[] }>;
        };
      };
      const { violations } = await axe.run({
        runOnly: tags,
        rules: Object.fromEntries(named.map((rule) => [rule, { enabled: true }])),
      });
      return violations.flatMap(({ id, nodes }) =>
        nodes.map((node) => `${id}: ${node.target.join(' ')}: ${node.failureSummary}`),
      );
    },
    { tags: RULES, named: ['color-contrast-enhanced', ...more] },
  );
}

/** Whether anything sticks out of the page's width. */
export async function overflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Texts of the running visit that do not fit their box, cut where something around them hides what sticks out. */
export async function cutOff(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const texts = [
      ...document.querySelectorAll(
        '.asked-words, .heard dd, .heard dt, .moment-talk dt, .energy-state, .energy-zone, .chip, .live p, .proof-number, .visit-keys .key, .practice-keys .key, .leading, .sheet label',
      ),
    ];
    const isCut = (element: Element) => {
      if (element.closest('.reader-only') !== null) return false;
      const { overflowX, overflowY } = getComputedStyle(element);
      const wide = element.scrollWidth > element.clientWidth + 1;
      const high = element.scrollHeight > element.clientHeight + 1 && overflowY !== 'visible';
      return wide || (high && overflowX !== 'visible');
    };
    return texts.filter(isCut).map((element) => element.textContent ?? '');
  });
}

/** The size of the smallest key of the page, in CSS pixels. */
export async function smallestKey(page: Page): Promise<{ readonly width: number; readonly height: number }> {
  return page.evaluate(() => {
    const boxes = [...document.querySelectorAll('.key')].map((key) => key.getBoundingClientRect());
    return {
      width: Math.min(...boxes.map((box) => box.width)),
      height: Math.min(...boxes.map((box) => box.height)),
    };
  });
}

/** Controls and texts that lie over each other, where nothing is meant to: what is in view, by their words. */
export async function overlaps(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const open = document.querySelector('dialog[open]') ?? document.body;
    const boxes = [...open.querySelectorAll('button, input, select, .asked-words, .warned, .heard dd, .live-number')]
      .filter((element) => element.closest('.reader-only') === null && element.checkVisibility())
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && box.height > 0 && box.bottom > 0 && box.top < innerHeight);
    const found: string[] = [];
    for (const [i, a] of boxes.entries())
      for (const b of boxes.slice(i + 1)) {
        if (a.element.contains(b.element) || b.element.contains(a.element)) continue;
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        // What scrolls within its own frame is not laid over what is outside of it.
        if (wide <= 2 || high <= 2 || scrollerOf(a.element) !== scrollerOf(b.element)) continue;
        found.push(`${wordsOf(a.element)} | ${wordsOf(b.element)}`);
      }
    return found;

    function wordsOf(element: Element): string {
      return (element.textContent || element.getAttribute('aria-label') || element.id || element.tagName).slice(0, 30);
    }

    function scrollerOf(element: Element): Element | null {
      for (let one = element.parentElement; one !== null; one = one.parentElement)
        if (['auto', 'scroll'].includes(getComputedStyle(one).overflowY)) return one;
      return null;
    }
  });
}

/**
 * What of the running visit is written larger than the step or question, or than the value: those two are the largest
 * things, in every state. A step in many words may be smaller than the value, never than anything else.
 */
export async function largerThanTheTwo(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const visit = document.querySelector('main.visit');
    if (visit === null || document.querySelector('dialog[open]') !== null) return [];
    const size = (element: Element) => Number.parseFloat(getComputedStyle(element).fontSize);
    const two = '.asked-words, .live-number, .proof-value';
    const largest = [...visit.querySelectorAll(two)].filter((one) => one.checkVisibility());
    const least = Math.min(...largest.map(size));
    if (largest.length === 0) return ['neither a step nor a value is shown'];
    return [...visit.querySelectorAll('*')]
      .filter((element) => element.closest(`${two}, .reader-only`) === null && element.checkVisibility())
      .filter((element) =>
        [...element.childNodes].some((one) => one.nodeType === Node.TEXT_NODE && one.nodeValue?.trim()),
      )
      .filter((element) => size(element) >= least)
      .map((element) => `${size(element)} px beside ${least} px: ${element.textContent?.slice(0, 40)}`);
  });
}

/** Where red is meant to be: energy that may be there, cautions and warnings, and the keys that answer danger. */
const DANGER =
  '.energy-live, .energy-unknown, .asked-caution, .warned, .key.warm, [data-by="stop"], .practice-now[data-asked="caution"], .practice-now[data-asked="held"]';
const KEYS_OF_DANGER = ['Live – I have it', 'I have it', 'Somebody is hurt'];

/** What is red, or reddish, as computed, and is no danger: red says that and nothing else. */
export async function redWithoutDanger(page: Page): Promise<readonly string[]> {
  return page.evaluate(
    ({ danger, keys }) => {
      const found: string[] = [];
      for (const element of document.querySelectorAll('body *')) {
        const key = element.closest('.key.warm');
        const isMeant = element.closest(danger) !== null && (key === null || keys.includes(key.textContent ?? ''));
        if (isMeant || element.closest('.reader-only') !== null || !element.checkVisibility()) continue;
        const style = getComputedStyle(element);
        const isSvg = element instanceof SVGElement;
        const shown = [
          ['text', style.color, true],
          ['paper', style.backgroundColor, true],
          ['frame', style.borderTopColor, Number.parseFloat(style.borderTopWidth) > 0],
          ['frame', style.borderLeftColor, Number.parseFloat(style.borderLeftWidth) > 0],
          ['filling', style.fill, isSvg],
          ['line', style.stroke, isSvg],
        ] as const;
        for (const [what, colour, counts] of shown)
          if (counts && isRed(colour))
            found.push(
              `${what} ${colour}: ${element.className || element.tagName} ${element.textContent?.slice(0, 30)}`,
            );
      }
      return found;

      /** A hue within 25 degrees of red that is clearly a colour. */
      function isRed(colour: string): boolean {
        const [r = 0, g = 0, b = 0, a = 1] = (colour.match(/[\d.]+/g) ?? []).map(Number);
        const [high, low] = [Math.max(r, g, b), Math.min(r, g, b)];
        if (!colour.startsWith('rgb') || a === 0 || high - low < 20 || high !== r) return false;
        const hue = (60 * (g - b)) / (high - low);
        return Math.abs(hue) <= 25;
      }
    },
    { danger: DANGER, keys: KEYS_OF_DANGER },
  );
}

/** Words of the running visit that are broken in two where they have no hyphen and no end of a word. */
export async function brokenWords(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const open = document.querySelector('dialog[open]') ?? document.querySelector('main.visit');
    if (open === null) return found;
    const walker = document.createTreeWalker(open, NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      if (node.parentElement?.closest('.reader-only') !== null || !node.parentElement.checkVisibility()) continue;
      for (const word of (node.nodeValue ?? '').matchAll(/[\p{L}\p{N}]+/gu)) {
        range.setStart(node, word.index);
        range.setEnd(node, word.index + word[0].length);
        const lines = new Set(
          [...range.getClientRects()].filter(({ width }) => width > 0).map(({ top }) => Math.round(top)),
        );
        if (lines.size > 1) found.push(word[0]);
      }
    }
    return found;
  });
}

/**
 * What of the two that count, what is to be done next and its value, is not in sight as the page stands: below the fold,
 * scrolled out of its frame, or under the keys. Words that fill more than the screen begin in sight.
 */
export async function outOfSight(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    if (document.querySelector('main.visit') === null || document.querySelector('dialog[open]') !== null) return [];
    const frame = document.querySelector('.visit-read')?.getBoundingClientRect();
    const bottom = frame !== undefined && frame.height > 0 ? Math.min(innerHeight, frame.bottom) : innerHeight;
    const top = frame !== undefined && frame.height > 0 ? frame.top : 0;
    const isOut = (element: Element) => {
      const box = element.getBoundingClientRect();
      const end = element.matches('.asked-words') ? Math.min(box.bottom, box.top + 0.4 * innerHeight) : box.bottom;
      return box.height > 0 && (box.top < top - 1 || end > bottom + 1);
    };
    return [...document.querySelectorAll('.asked-words, .live-number, .proof-number[aria-current]')]
      .filter(isOut)
      .map((element) => element.textContent?.slice(0, 40) ?? '');
  });
}

/**
 * Texts of the page that stand out of the window's width, or out of the key or the cell of energy they are written in. A
 * wide table that is moved sideways within its own frame hides none.
 */
export async function pastTheEdge(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const found = new Set<string>();
    const open = document.querySelector('dialog[open]') ?? document.body;
    const walker = document.createTreeWalker(open, NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    const isMoved = (element: Element | null): boolean =>
      element !== null &&
      element !== document.body &&
      (/auto|scroll/.test(getComputedStyle(element).overflowX) || isMoved(element.parentElement));
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (parent === null || parent.closest('.reader-only, svg') !== null || !parent.checkVisibility()) continue;
      if (parent.closest('table') !== null && isMoved(parent)) continue;
      const frame = parent.closest('.energy-cell, .key')?.getBoundingClientRect();
      const [left, right] = [Math.max(0, frame?.left ?? 0), Math.min(innerWidth, frame?.right ?? innerWidth)];
      range.selectNodeContents(node);
      for (const box of range.getClientRects())
        if (box.width > 0 && (box.left < left - 1 || box.right > right + 1)) found.add(node.nodeValue?.trim() ?? '');
    }
    return [...found];
  });
}

/** Keys of the running visit that end below the window as it stands, by their words. */
export async function keysBelowTheFold(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('.visit-keys .key')]
      .filter((key) => key.getBoundingClientRect().bottom > innerHeight + 1)
      .map((key) => `${key.textContent} ends ${Math.round(key.getBoundingClientRect().bottom - innerHeight)} px below`),
  );
}

/** What is pressed at the running visit and measures less than 20 mm, as CSS counts them, in either direction. */
export async function tooSmallForGloves(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    // Whoever types has taken the gloves off: the line and what sends it are as large as any line of a form.
    [...document.querySelectorAll('main.visit .visit-now button, .pad-choices button')]
      .filter((button) => button.closest('.type-line, .so-far') === null && button.checkVisibility())
      .map((button) => ({ words: button.textContent ?? '', box: button.getBoundingClientRect() }))
      .filter(({ box }) => box.width < 75.6 || box.height < 75.6)
      .map(({ words, box }) => `${words}: ${Math.round(box.width)}×${Math.round(box.height)}`),
  );
}

/** The sizes of text that a page is looked at in: its own three, and the browser's own text at twice its size. */
export const TWICE = 'twice';

/** Sets the page's light and its size of text, `TWICE` for twice the usual. */
export async function show(page: Page, light: string, text: string): Promise<void> {
  await page.evaluate(
    ([light, text, twice]) => {
      const { dataset, style } = document.documentElement;
      dataset['light'] = light;
      dataset['text'] = text === twice ? 'normal' : text;
      style.fontSize = text === twice ? '225%' : '';
    },
    [light, text, TWICE] as const,
  );
}
