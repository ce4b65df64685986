import type { House } from '../../core/people/house.ts';
import { href } from '../links.ts';
import { words } from '../state/words.ts';

/** The vet's number wherever a puppy needs help, or the way to write it down. */
export function VetLine({ house }: { house: House }) {
  if (house.vetPhone !== '') return <p className="vet">{words.growth.vet(house.vetName, house.vetPhone)}</p>;
  return (
    <p className="vet">
      {words.growth.vetUnknown} <a href={href({ at: 'house', field: 'vetPhone' })}>{words.growth.writeVet}</a>
    </p>
  );
}
