import type { Page } from 'playwright-core';

/** Texts in the drawings that lie over one another, by their words. Measured in the page. */
export function overlappingLabels(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const texts = [...document.querySelectorAll('.tracks svg text, .bar-chart svg text, .ladder-drawing text')].map(
      (element) => ({
        words: element.textContent ?? '',
        svg: element.closest('svg'),
        box: element.getBoundingClientRect(),
      }),
    );
    return texts.flatMap((a, i) =>
      texts.slice(i + 1).flatMap((b) => {
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        // The box of a text holds room above and below its signs.
        return wide > 1 && high > 4 ? [`${a.words} | ${b.words}`] : [];
      }),
    );
  });
}

/** Texts in the drawings that stick out of them. */
export function cutLabels(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('.tracks svg text, .bar-chart svg text, .ladder-drawing text')]
      .filter((element) => {
        const [box, svg] = [element.getBoundingClientRect(), element.closest('svg')?.getBoundingClientRect()];
        return svg === undefined || box.left < svg.left - 1 || box.right > svg.right + 1 || box.bottom > svg.bottom + 4;
      })
      .map((element) => element.textContent ?? ''),
  );
}

/** Elements in the colours of danger that are none of those that may be. */
export function strayDanger(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const probe = document.body.appendChild(document.createElement('i'));
    const colourOf = (name: string) => {
      probe.style.color = `var(${name})`;
      return getComputedStyle(probe).color;
    };
    // In full sun some of them are plain white or black, as all else is.
    const plain = ['--paper', '--panel', '--ink'].map(colourOf);
    const colours = ['--warm', '--warm-paper', '--warm-ink'].map(colourOf).filter((one) => !plain.includes(one));
    probe.remove();
    const danger =
      '.energy-live, .energy-unknown, .stretch-live, .stretch-unknown, .happening-danger, .chip-danger, .badge-danger, .answer-danger, .line-unproven, .line-hurt';
    const isDrawn = (style: CSSStyleDeclaration, property: string) => {
      if (property === 'color') return false;
      if (property.startsWith('border')) return style.borderLeftWidth !== '0px';
      return style.getPropertyValue(property) !== 'none';
    };
    return [...document.querySelectorAll('main *')]
      .filter((element) => element.closest(danger) === null)
      .filter((element) => {
        const style = getComputedStyle(element);
        const own = [...element.childNodes].some(
          (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim(),
        );
        const drawn = ['background-color', 'border-left-color', 'border-top-color', 'fill', 'stroke'];
        return (
          (own && colours.includes(style.color)) ||
          drawn.some((property) => isDrawn(style, property) && colours.includes(style.getPropertyValue(property)))
        );
      })
      .map((element) => `${element.tagName}.${element.getAttribute('class') ?? ''}`);
  });
}

/** Texts of the review that stick out of the box they stand in, or are cut by it. */
export function cutTexts(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [
      ...document.querySelectorAll(
        '.visit-card span, .answer strong, .answer dt, .chip, .line span, .badge, .control, td, th',
      ),
    ]
      .filter((element) => element.closest('.reader-only, select') === null && element.checkVisibility())
      .filter((element) => element.tagName !== 'SELECT' && element.tagName !== 'INPUT')
      .filter((element) => element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0)
      .map((element) => `${element.className}: ${element.textContent}`),
  );
}
