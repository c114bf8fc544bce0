import type { Page } from 'playwright-core';

/** One text or mark that is not told apart well enough from its ground. */
export interface WeakContrast {
  readonly what: string;
  /** WCAG 2.2 contrast ratio, 1 to 21. */
  readonly ratio: number;
  readonly needs: number;
  readonly colours: string;
}

/**
 * Every visible text of the page, shadow roots included, against the ground it stands on, and every drawn sign
 * by its strongest shape: WCAG 2.2 1.4.3 (4.5, or 3 from 24 px or 18.66 px bold) and 1.4.11 (3). A hatched
 * ground counts with whichever of its colours is nearest to the text.
 */
export async function weakContrasts(
  page: Page,
): Promise<{ texts: number; marks: number; weak: WeakContrast[] }> {
  return page.evaluate(() => {
    type Rgba = [number, number, number, number];
    const parse = (text: string): Rgba[] =>
      [...text.matchAll(/rgba?\(([^)]+)\)|color\(srgb ([^)]+)\)/g)].map((match) => {
        const numbers = (match[1] ?? match[2] ?? '')
          .split(/[\s,/]+/)
          .filter(Boolean)
          .map(Number);
        const scale = match[2] === undefined ? 1 : 255;
        return [numbers[0]! * scale, numbers[1]! * scale, numbers[2]! * scale, numbers[3] ?? 1];
      });
    const over = (top: Rgba, under: Rgba): Rgba => {
      const mix = (i: number): number => top[i]! * top[3] + under[i]! * (1 - top[3]);
      return [mix(0), mix(1), mix(2), 1];
    };
    const channel = (value: number): number => {
      const share = value / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    };
    const luminance = ([r, g, b]: Rgba): number =>
      0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b);
    const ratioOf = (a: Rgba, b: Rgba): number => {
      const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
      return (high + 0.05) / (low + 0.05);
    };
    const parentOf = (element: Element): Element | null =>
      element.assignedSlot ?? element.parentElement ?? (element.getRootNode() as ShadowRoot).host ?? null;
    const groundsOf = (from: Element): Rgba[] => {
      const layers: Rgba[][] = [];
      for (let at: Element | null = from; at !== null; at = parentOf(at)) {
        const style = getComputedStyle(at);
        const image = style.backgroundImage === 'none' ? [] : parse(style.backgroundImage);
        const flat = parse(style.backgroundColor);
        // A drawn background that does not fill its box (a rule under a figure) is not the text's ground.
        const fills =
          image.length > 0 && style.backgroundSize === 'auto' && style.backgroundRepeat !== 'no-repeat';
        const layer = [...(fills ? image.filter((c) => c[3] > 0.05) : []), ...flat].filter((c) => c[3] > 0);
        if (layer.length > 0) layers.push(layer);
        if (flat.some((c) => c[3] === 1)) break;
      }
      let grounds: Rgba[] = [[255, 255, 255, 1]];
      for (const layer of layers.reverse())
        grounds = layer.flatMap((top) => grounds.map((under) => over(top, under)));
      return grounds;
    };
    const visible = (element: Element): boolean =>
      element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
    const nameOf = (element: Element): string => {
      const host = (element.getRootNode() as ShadowRoot).host;
      return `${host?.localName ?? ''} ${element.localName}.${element.getAttribute('class') ?? ''}`;
    };
    const weak: { what: string; ratio: number; needs: number; colours: string }[] = [];
    let texts = 0;
    let marks = 0;
    const checkText = (element: Element, words: string): void => {
      const style = getComputedStyle(element);
      if (style.clipPath === 'inset(50%)' || element.closest('[disabled], .sr')) return;
      const px = Number.parseFloat(style.fontSize);
      const needs = px >= 24 || (px >= 18.66 && Number(style.fontWeight) >= 700) ? 3 : 4.5;
      const color = parse(style.color)[0]!;
      const grounds = groundsOf(element);
      const ratio = Math.min(...grounds.map((ground) => ratioOf(over(color, ground), ground)));
      texts += 1;
      if (ratio < needs)
        weak.push({
          what: `${nameOf(element)}: ${words.slice(0, 40)}`,
          ratio,
          needs,
          colours: `${style.color} on ${grounds.join(' | ')}`,
        });
    };
    const checkMark = (drawing: SVGSVGElement): void => {
      const grounds = groundsOf(drawing);
      const shapes = [...drawing.querySelectorAll('path, rect, circle, line, polygon')];
      const painted = shapes.flatMap((shape) => {
        const style = getComputedStyle(shape);
        return [style.fill, style.stroke].filter((paint) => paint !== 'none').flatMap(parse);
      });
      if (painted.length === 0) return;
      marks += 1;
      const ratio = Math.max(
        ...painted.map((paint) => Math.min(...grounds.map((ground) => ratioOf(over(paint, ground), ground)))),
      );
      if (ratio < 3)
        weak.push({
          what: `mark ${nameOf(drawing)} in ${nameOf(parentOf(drawing)!)}`,
          ratio,
          needs: 3,
          colours: `${painted.join(' ')} on ${grounds.join(' | ')}`,
        });
    };
    const walk = (node: Node): void => {
      if (node instanceof Element) {
        if (['STYLE', 'SCRIPT', 'TITLE', 'NOSCRIPT', 'OPTION'].includes(node.tagName) || !visible(node))
          return;
        if (node instanceof SVGSVGElement && !node.hasAttribute('data-plot')) checkMark(node);
        if (node instanceof HTMLInputElement && node.value !== '') checkText(node, node.value);
        // Figures that are drawn as lines are read like any other.
        if (node.matches('path.digits')) checkText(node, 'drawn figures');
        if (node.shadowRoot) walk(node.shadowRoot);
      }
      for (const child of node.childNodes) {
        if (child instanceof Text) {
          const words = child.data.trim();
          const parent = child.parentElement;
          if (words && parent && visible(parent) && parent.getClientRects().length > 0)
            checkText(parent, words);
        } else walk(child);
      }
    };
    walk(document.body);
    return { texts, marks, weak };
  });
}
