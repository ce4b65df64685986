/** Forty numbers, right and wrong, as readers send them and people type them. Published checks are rows standards 17 to 20 of the evidence. */
import { describe, expect, it } from 'vitest';
import { chipGroups, chipSchema, readChip } from '../../../core/care/microchip.ts';
import { chipFault, chipIssuer, chipText } from '../../../core/words/en/care.ts';

const RIGHT: readonly (readonly [typed: string, code: string, by: string])[] = [
  ['982000001088420', '982000001088420', 'maker'],
  [' 982 0000 0108 8420 ', '982000001088420', 'maker'],
  ['982-000-001-088-420', '982000001088420', 'maker'],
  ['982.000001088420', '982000001088420', 'maker'],
  ['LA 982 000001088420\r\n', '982000001088420', 'maker'],
  ['LA_982_000001088420', '982000001088420', 'maker'],
  ['la982000001088420', '982000001088420', 'maker'],
  ['982\u00a00000\u00a00108\u00a08420', '982000001088420', 'maker'],
  ['040000000000123', '040000000000123', 'country'],
  ['056000000000123', '056000000000123', 'country'],
  ['826000000000000', '826000000000000', 'country'],
  ['840274877906943', '840274877906943', 'country'],
  ['900000000000001', '900000000000001', 'makers-together'],
  ['901000000000001', '901000000000001', 'maker'],
  ['998000000000001', '998000000000001', 'maker'],
  ['999000000000001', '999000000000001', 'test'],
  ['001000000000001', '001000000000001', 'nobody'],
  ['419000000000001', '419000000000001', 'nobody'],
  ['898000000000001', '898000000000001', 'nobody'],
  ['123456789', '123456789', 'before-iso'],
  ['0A1B2C3D4E', '0A1B2C3D4E', 'before-iso'],
  ['0a1b2c3d4e', '0A1B2C3D4E', 'before-iso'],
];

const WRONG: readonly (readonly [typed: string, fault: string])[] = [
  ['', 'chip-length'],
  ['   ', 'chip-length'],
  ['LA', 'chip-characters'],
  ['98200000108842', 'chip-length'],
  ['9820000010884200', 'chip-length'],
  ['982000001088420982000001088420', 'chip-length'],
  ['12345678', 'chip-length'],
  ['12345678901', 'chip-length'],
  ['982274877906944', 'chip-animal-too-large'],
  ['982999999999999', 'chip-animal-too-large'],
  ['000000000000001', 'chip-no-issuer'],
  ['98200000108842O', 'chip-characters'],
  ['98200000108842l', 'chip-characters'],
  ['９８２０００００１０８８４２０', 'chip-characters'],
  ['٩٨٢٠٠٠٠٠١٠٨٨٤٢٠', 'chip-characters'],
  ['9.82E+14', 'chip-characters'],
  ['+982000001088420', 'chip-characters'],
  ['982/000001088420', 'chip-characters'],
  ['982 000001088420 982 000001088420', 'chip-length'],
];

describe('numbers of chips', () => {
  it.each(RIGHT)('%j is %s, by %s', (typed, code, by) => {
    const read = readChip(typed);
    expect(read).toMatchObject({ ok: true, code, issuer: { by } });
    if (read.ok) expect(chipIssuer(read.issuer)).not.toBe('');
    expect(chipSchema.safeParse({ id: 'puppy-0001', code, day: null, by: '' }).success).toBe(true);
  });

  it.each(WRONG)('%j is not: %s', (typed, code) => {
    const read = readChip(typed);
    expect(read).toMatchObject({ ok: false, fault: { code } });
    if (!read.ok) expect(chipFault(read.fault)).toMatch(/\.$/);
    expect(chipSchema.safeParse({ id: 'puppy-0001', code: typed, day: null, by: '' }).success).toBe(false);
  });

  it('is kept as it is read: with blanks or in small letters it is not the number itself', () => {
    for (const [typed, code] of RIGHT) {
      expect(chipSchema.safeParse({ id: 'puppy-0001', code: typed, day: null, by: '' }).success, typed).toBe(typed === code);
    }
  });

  it('is said in groups that give the number again', () => {
    expect(chipText('982000001088420')).toBe('982\u00a00000\u00a00108\u00a08420');
    for (const [, code] of RIGHT) expect(chipGroups(code).join('')).toBe(code);
    for (const [, code] of RIGHT) expect(readChip(chipText(code))).toMatchObject({ ok: true, code });
  });

  it('names the country in words', () => {
    const said = (typed: string) => {
      const read = readChip(typed);
      return read.ok ? chipIssuer(read.issuer) : '';
    };
    expect(said('826000000000001')).toBe('country code: United Kingdom');
    expect(said('040000000000001')).toBe('country code: Austria');
  });
});
