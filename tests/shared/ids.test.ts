/** Codes for the back of an offcut: short, different, and read back however they are typed. */
import { describe, expect, it } from 'vitest';
import { pencilCode, readPencilCode } from '#shared/ids.ts';

describe('pencil codes', () => {
  it('are all different and get longer as late as can be', () => {
    const codes = Array.from({ length: 8_500 }, (_, n) => pencilCode(n + 1));
    expect(new Set(codes).size).toBe(8_500);
    expect(codes.map((code) => code.length).lastIndexOf(2)).toBe(399);
    expect(codes.map((code) => code.length).lastIndexOf(3)).toBe(8_399);
  });

  it('leave out what a pencil confuses', () => {
    const signs = new Set(Array.from({ length: 8_000 }, (_, n) => pencilCode(n + 1)).join(''));
    for (const sign of '0OQ1IL2Z5S8BGU') expect(signs).not.toContain(sign);
  });

  it('differ in every sign from the one before', () => {
    for (let n = 2; n <= 400; n++) {
      const [one, other] = [pencilCode(n - 1), pencilCode(n)];
      expect([...one].filter((sign, place) => sign === other[place]).length).toBe(0);
    }
  });

  it('are read without regard to case and gaps', () => {
    expect(readPencilCode(' k-7 c')).toBe('K7C');
  });

  it('throw on what is no number of a thing', () => {
    expect(() => pencilCode(0)).toThrow('invalid number');
    expect(() => pencilCode(1.5)).toThrow('invalid number');
  });
});
