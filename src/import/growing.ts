/** Whole numbers from 0 to 2^32 - 1 in a row that grows: a quarter of the memory of an array of numbers. */
export class GrowingNumbers {
  private held = new Uint32Array(1 << 12);
  length = 0;

  push(value: number): void {
    if (this.length === this.held.length) {
      const larger = new Uint32Array(this.held.length * 2);
      larger.set(this.held);
      this.held = larger;
    }
    this.held[this.length] = value;
    this.length += 1;
  }

  /** The numbers so far, without the room to grow. */
  toArray(): Uint32Array {
    return this.held.slice(0, this.length);
  }
}
