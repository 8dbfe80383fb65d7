// Judges a page by what is really on it: what sticks out or is cut off, what is too small for a glove, and words that
// did not come from the catalogue; and what axe finds by the rules that every screen is held to.
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/** What axe finds, contrast at 7:1 and the size of targets included. */
export async function axeFinds(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .options({
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } },
    })
    .analyze();
  return violations.flatMap((violation) =>
    violation.nodes.map((node) => `${violation.id}: ${node.target.join(' ')}: ${node.failureSummary ?? ''}`),
  );
}

/** What sticks out of its box or of the window, is cut off, or cannot be seen though it is the main act. */
export async function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const open = document.querySelector('dialog[open]');
    const root = open ?? document.querySelector('#app') ?? document.body;
    if (document.documentElement.scrollWidth > window.innerWidth + 1) found.push('the page scrolls sideways');
    const textOf = (element: Element): string => (element.textContent ?? '').trim().slice(0, 40);
    for (const element of root.querySelectorAll<HTMLElement>('*')) {
      if (element.closest('svg, .visually-hidden, option, details:not([open]) > :not(summary)')) continue;
      if (!open && element.closest('dialog')) continue;
      const box = element.getBoundingClientRect();
      const style = getComputedStyle(element);
      if (box.width === 0 || box.height === 0 || style.visibility === 'hidden' || style.opacity === '0') continue;
      const what = `${element.tagName.toLowerCase()}.${element.className} "${textOf(element)}"`;
      if (box.right > window.innerWidth + 1 || box.left < -1) found.push(`${what} sticks out of the window`);
      const hasText = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
      if (!hasText || element.matches('input, textarea, select') || style.display === 'inline') continue;
      if (element.scrollWidth > element.clientWidth + 1) found.push(`${what} is wider than its box`);
      const isClipped = style.overflowY !== 'auto' && style.overflowY !== 'visible';
      if (isClipped && element.scrollHeight > element.clientHeight + 2) found.push(`${what} is higher than its box`);
    }
    for (const text of root.querySelectorAll<SVGTextElement>('svg text')) {
      const box = text.getBoundingClientRect();
      const around = text.ownerSVGElement?.getBoundingClientRect();
      if (!around || box.width === 0) continue;
      const isOut =
        box.left < around.left - 2 ||
        box.right > around.right + 2 ||
        box.top < around.top - 4 ||
        box.bottom > around.bottom + 4;
      if (isOut) found.push(`the words "${textOf(text)}" stick out of their drawing`);
    }
    if (open) return found;
    const main = document.querySelector<HTMLElement>('footer button');
    if (main === null) return [...found, 'there is no main act'];
    const box = main.getBoundingClientRect();
    if (box.top < 0 || box.bottom > window.innerHeight || box.height < 40) found.push('the main act is out of sight');
    return found;
  });
}

/** On the walk: targets of at least 64 px and text of at least 18 px. */
export async function tooSmallForTheWalk(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    for (const element of document.querySelectorAll<HTMLElement>('main *, footer *')) {
      if (element.closest('svg, .visually-hidden, .more-of-visit')) continue;
      const box = element.getBoundingClientRect();
      if (box.width === 0) continue;
      const text = (element.textContent ?? '').trim();
      if (element.matches('button') && (box.height < 63.5 || box.width < 63.5)) {
        found.push(`${text}: ${Math.round(box.width)} by ${Math.round(box.height)} px`);
      }
      const hasText = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
      const size = getComputedStyle(element).fontSize;
      if (hasText && Number.parseFloat(size) < 18) found.push(`${text}: ${size}`);
    }
    return found;
  });
}

/** Words on screen that stand outside the brackets of the pseudo-language, and codes that the catalogue lacks. */
export async function bareWords(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const isBare = (text: string): boolean => {
      let rest = text;
      for (let before = ''; before !== rest;) {
        before = rest;
        rest = rest.replace(/\[[^[\]⟨⟩]*\]|⟨[^⟨⟩]*⟩/gu, '');
      }
      return /\p{L}/u.test(rest) || text.includes('⟦');
    };
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const text = node.textContent ?? '';
      if (node.parentElement?.closest('script, style, textarea')) continue;
      if (text.trim() !== '' && isBare(text)) found.push(text.trim());
    }
    for (const element of document.querySelectorAll('[aria-label], [title], [placeholder], [alt]')) {
      for (const name of ['aria-label', 'title', 'placeholder', 'alt']) {
        const text = element.getAttribute(name);
        if (text !== null && isBare(text)) found.push(`${name}: ${text}`);
      }
    }
    return found;
  });
}
