import type { House } from '../../core/people/house.ts';
import { growthWords } from '../../core/words/en/growth.ts';
import { href } from '../links.ts';

/** The vet's number wherever a puppy needs help, or the way to write it down. */
export function VetLine({ house }: { house: House }) {
  if (house.vetPhone !== '') return <p className="vet">{growthWords.vet(house.vetName, house.vetPhone)}</p>;
  return (
    <p className="vet">
      {growthWords.vetUnknown} <a href={href({ at: 'rules' })}>{growthWords.writeVet}</a>
    </p>
  );
}
