import type { House } from '../../core/records/house.ts';
import { href } from '../app/routes.ts';
import { growthWords } from '../words/en/growth.ts';

/** The vet's number wherever a puppy needs help, or the way to write it down. */
export function VetLine({ house }: { house: House }) {
  if (house.vetPhone !== '') return <p className="vet">{growthWords.vet(house.vetName, house.vetPhone)}</p>;
  return (
    <p className="vet">
      {growthWords.vetUnknown} <a href={href({ at: 'rules' })}>{growthWords.writeVet}</a>
    </p>
  );
}
