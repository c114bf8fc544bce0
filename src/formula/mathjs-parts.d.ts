// mathjs exports what each of its functions is made by; its own types leave these out.
import 'mathjs';

declare module 'mathjs' {
  /** Makes one part of mathjs from the parts that it names as its needs. */
  type MakePart<Part> = (needs: Readonly<Record<string, unknown>>) => Part;

  export const createParse: MakePart<(text: string) => MathNode>;
  export const createUnitClass: MakePart<{
    new (value: null, name: string): object;
    isValuelessUnit(name: string): boolean;
  }>;
}
