/** Typed arrays that need more room. Knows nothing of what they hold. */

/** At least `least` long, beginning with the same numbers; twice as long when absent. */
export function grown<A extends Int16Array | Int32Array | Float64Array | Uint8Array>(full: A, least = 0): A {
  const room = full.constructor as new (length: number) => A;
  const larger = new room(Math.max(least, full.length * 2));
  larger.set(full as never);
  return larger;
}
