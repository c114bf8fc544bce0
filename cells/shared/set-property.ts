import { nothing } from 'lit';
import { Directive, directive, type ElementPart, type PartInfo, PartType } from 'lit/directive.js';

/**
 * Sets one CSS custom property on an element through its `style` object. A `style=` attribute in a template
 * is blocked by the page's Content-Security-Policy; this is not.
 */
class SetPropertyDirective extends Directive {
  constructor(info: PartInfo) {
    super(info);
    if (info.type !== PartType.ELEMENT)
      throw new Error('setProperty stands on an element, not on an attribute or a child.');
  }

  override render(_name: `--${string}`, _value: string): typeof nothing {
    return nothing;
  }

  override update(part: ElementPart, [name, value]: [`--${string}`, string]): typeof nothing {
    (part.element as HTMLElement).style.setProperty(name, value);
    return nothing;
  }
}

/**
 * Give an element one custom property, from which its style sheet takes a width or a place.
 *
 * @example html`<b ${setProperty('--u', '42%')}></b>` with `.gauge b { width: var(--u) }`
 */
export const setProperty = directive(SetPropertyDirective);
