/**
 * The size that dogs of a breed grow to, for the breeds whose birth weights were published (birth-weight.ts). Common practice, no source: a
 * suggestion that she can change. A name that means several sizes has none.
 */
import type { SizeClass } from '../classes.ts';

export interface BreedSize {
  readonly breed: string;
  readonly grows: SizeClass | null;
}

export const BREED_SIZES: readonly BreedSize[] = [
  { breed: 'Australian Shepherd', grows: 'medium' },
  { breed: 'Bichon Frise', grows: 'small' },
  { breed: 'Cocker Spaniel', grows: 'medium' },
  { breed: 'Dobermann', grows: 'large' },
  { breed: 'German Shepherd', grows: 'large' },
  { breed: 'Golden Retriever', grows: 'large' },
  { breed: 'Great Dane', grows: 'giant' },
  { breed: 'Labrador Retriever', grows: 'large' },
  { breed: 'Maltese', grows: 'toy' },
  { breed: 'Pug', grows: 'small' },
  { breed: 'Rottweiler', grows: 'large' },
  { breed: 'Saint Bernard', grows: 'giant' },
  { breed: 'Shih Tzu', grows: 'small' },
  { breed: 'Spitz', grows: null },
  { breed: 'Toy Poodle', grows: 'toy' },
  { breed: 'West Highland White Terrier', grows: 'small' },
];
