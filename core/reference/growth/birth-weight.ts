/**
 * Birth weights by breed. Mugnier, Mila, Guiraud, Brévaux, Lecarpentier, Martinez, Mariani, Adib-Lesaux, Chastant-Maillard,
 * Saegerman, Grellet 2020, BMC Vet Res 16, tables 1 and 2: 4 971 puppies of 784 litters. Seen. Weights in grams; "low" is
 * below the receiver-operating threshold, "very low" below the classification-tree threshold; deaths to day 21 in percent.
 */

export interface BreedBirthWeight {
  readonly breed: string;
  readonly mean: number;
  readonly sd: number;
  readonly lowBelow: number;
  readonly veryLowBelow: number;
  /** Normal, low, very low. */
  readonly deaths: readonly [number, number, number];
}

export const BREED_BIRTH_WEIGHTS: readonly BreedBirthWeight[] = [
  { breed: 'Australian Shepherd', mean: 363.8, sd: 82.6, lowBelow: 375, veryLowBelow: 213, deaths: [3.4, 4.1, 45.5] },
  { breed: 'Bichon Frise', mean: 180.1, sd: 35.6, lowBelow: 181, veryLowBelow: 163.5, deaths: [15.2, 16.7, 42.4] },
  { breed: 'Cocker Spaniel', mean: 262.6, sd: 59.4, lowBelow: 280, veryLowBelow: 142.5, deaths: [3.5, 6.1, 68.4] },
  { breed: 'German Shepherd', mean: 513.7, sd: 90.8, lowBelow: 480, veryLowBelow: 338, deaths: [3.3, 12.2, 71.4] },
  { breed: 'Golden Retriever', mean: 394.8, sd: 76.8, lowBelow: 417, veryLowBelow: 177.5, deaths: [4.5, 8.1, 66.7] },
  { breed: 'Labrador Retriever', mean: 409.9, sd: 69.2, lowBelow: 406, veryLowBelow: 248, deaths: [2.8, 8.7, 57.7] },
  { breed: 'Maltese', mean: 161.9, sd: 34.2, lowBelow: 163, veryLowBelow: 115.5, deaths: [8.2, 11.7, 57.1] },
  { breed: 'Rottweiler', mean: 403.8, sd: 58.6, lowBelow: 410, veryLowBelow: 345, deaths: [10.7, 17.5, 53.3] },
  { breed: 'Shih Tzu', mean: 175.5, sd: 27.9, lowBelow: 176, veryLowBelow: 128.5, deaths: [9.0, 20.0, 75.0] },
  { breed: 'West Highland White Terrier', mean: 192.1, sd: 36.3, lowBelow: 190, veryLowBelow: 129, deaths: [5.6, 13.1, 53.8] },
];

/** Of all breeds in the study together, deaths to day 21 in percent: normal, low, very low birth weight. */
export const ALL_BREEDS_DEATHS: readonly [number, number, number] = [4.2, 8.9, 55.3];

interface SmallStudy {
  readonly who: string;
  readonly where: string;
}

/** Means of breeds that the table above lacks: no thresholds and no deaths were published with them. Weights in grams. */
export interface SmallStudyMean {
  /** How the breed is written, the first as the study has it. */
  readonly names: readonly [string, ...string[]];
  readonly mean: number;
  readonly study: SmallStudy;
}

/**
 * Seen. Few puppies of each breed. Of the three breeds that both studies have, its means are 4 to 21 % under those of the
 * large study, so a limit reckoned from them rather says too little than too much.
 */
const BAWASKAR: SmallStudy = { who: 'Bawaskar et al. 2018', where: 'Indian Journal of Canine Practice 10:123' };
/** Seen: 154 g, standard deviation 35. */
const MENCHETTI: SmallStudy = { who: 'Menchetti et al. 2020', where: 'Italian Journal of Animal Science 19:792' };

export const SMALL_STUDY_MEANS: readonly SmallStudyMean[] = [
  { names: ['Pug'], mean: 152.5, study: BAWASKAR },
  // Not the sizes of the German Spitz: the study says no more than "Spitz".
  { names: ['Spitz'], mean: 186.9, study: BAWASKAR },
  { names: ['Saint Bernard', 'St Bernard'], mean: 462, study: BAWASKAR },
  { names: ['Great Dane'], mean: 456.7, study: BAWASKAR },
  { names: ['Dobermann', 'Doberman', 'Doberman Pinscher'], mean: 525, study: BAWASKAR },
  { names: ['Toy Poodle', 'Poodle, toy'], mean: 154, study: MENCHETTI },
];
