/** Chips of puppies: no number twice, no test number in a real puppy. */
import { dateOf } from '../../core/calendar/clock.ts';
import { type Chip, chipSchema, readChip } from '../../core/care/microchip.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import type { Puppy } from '../../core/litter/litter.ts';
import { chipsOf, findChip, puppyWithChip, removeChip, setChip } from '../store/care.ts';
import { aboutPuppy, found, litterOf, puppyOf } from './facts.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

export function careHandlers(c: Context): HandlersOf<'care'> {
  const { db } = c.store;
  return {
    'care.chips': ({ litterId }) => {
      litterOf(c, litterId);
      return { chips: chipsOf(db, litterId) };
    },

    'care.setChip': ({ puppyId, change }) =>
      command(c, 'care.setChip', (recorder) => {
        const puppy = puppyOf(c, puppyId);
        const chip = { day: null, by: '', ...findChip(db, puppyId), ...change, id: puppyId };
        if (!('code' in chip)) throw new ContractFailure('bad-input', 'there is no number yet', 'change.code');
        const whole = chipSchema.parse(chip);
        checkChip(c, puppy, whole);
        setChip(db, recorder, whole);
        return { value: { chip: whole }, about: aboutPuppy(puppy, null) };
      }),

    'care.removeChip': ({ puppyId }) =>
      command(c, 'care.removeChip', (recorder) => {
        const puppy = puppyOf(c, puppyId);
        found(findChip(db, puppyId), 'chip');
        removeChip(recorder, puppyId);
        return { value: {}, about: aboutPuppy(puppy, null) };
      }),
  };
}

function checkChip(c: Context, puppy: Puppy, { code, day }: Chip): void {
  const read = readChip(code);
  if (read.ok && read.issuer.by === 'test' && !litterOf(c, puppy.litterId).demo)
    throw new ContractFailure('refused', 'a number for tests', 'change.code');
  const holder = puppyWithChip(c.store.db, code);
  if (holder !== null && holder !== puppy.id)
    throw new ContractFailure('conflict', 'another puppy has this number', 'change.code');
  if (day === null) return;
  if (day < dateOf(puppy.bornAt)) throw new ContractFailure('bad-input', 'the day is before the birth', 'change.day');
  if (day > dateOf(c.now().local)) throw new ContractFailure('bad-input', 'the day is to come', 'change.day');
}
