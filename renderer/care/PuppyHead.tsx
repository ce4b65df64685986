import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import { CollarBand } from '../parts/CollarBand.tsx';

/** A puppy at the head of its row. */
export function PuppyHead({ puppy }: { puppy: Puppy }) {
  return (
    <th scope="row">
      <CollarBand collar={puppy.collar} height={22} label={null} />
      {puppyName(puppy)}
    </th>
  );
}
