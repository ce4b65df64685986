/** Names that operations had in earlier programs: the journal of a file keeps them as they were written. */
const EARLIER: Readonly<Record<string, string>> = {
  'feeding.setFood': 'food.add',
  'food.set': 'food.add',
  'feeding.retireFood': 'food.retire',
  'feeding.chooseFood': 'food.choose',
  'feeding.setRotation': 'food.setWeek',
  'feeding.setGrownDogs': 'dogs.addGrown',
  'dogs.setGrown': 'dogs.addGrown',
  'feeding.weaningSet': 'weaning.setPlan',
  'feeding.weaningDrop': 'weaning.dropPlan',
  'feeding.weaningNote': 'weaning.note',
  'feeding.weaningTakeBack': 'weaning.takeBack',
  'feeding.damBegin': 'dogs.damBegin',
  'feeding.damChange': 'dogs.damChange',
  'feeding.damRemove': 'dogs.damRemove',
  'feeding.damWeigh': 'dogs.damWeigh',
  'feeding.damWithdraw': 'dogs.damWithdraw',
  'freezer.setDog': 'freezer.addDog',
  'freezer.setStarter': 'freezer.addStarter',
  'records.setHouse': 'people.setHouse',
};

/** What an operation of a journal is called now. */
export function nameNow(operation: string): string {
  return Object.hasOwn(EARLIER, operation) ? (EARLIER[operation] ?? operation) : operation;
}
