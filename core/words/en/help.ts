/** Help, in short plain paragraphs. Facts and figures are those of the program itself. */

export interface HelpKey {
  readonly keys: readonly string[];
  readonly does: string;
}

export interface HelpPart {
  readonly id: string;
  readonly title: string;
  readonly paragraphs: readonly string[];
  readonly keys?: readonly HelpKey[];
}

export const helpWords = {
  title: 'Help',
  lead: 'Short, and all of it. The program supports your judgement; it does not diagnose.',
  contents: 'On this page',
  vet: (name: string, phone: string) => `Your vet: ${name === '' ? phone : `${name}, ${phone}`}`,
  noVet: 'Your vet’s number is not written down yet.',
  writeVet: 'Write it down',
} as const;

export const helpParts: readonly HelpPart[] = [
  {
    id: 'weigh-in',
    title: 'The weigh-in',
    paragraphs: [
      'Put a puppy on the scale, type the number, press Enter. The next puppy is in hand. No mouse is needed, and there is nothing to save: a weight is kept the moment you press Enter.',
      'A number that does not fit is asked about in its own row. It is kept meanwhile, but left out of the reckoning until you answer. Press Enter again if it is right, Space to take the guess, or type another number.',
      'A number that fits a littermate who was not weighed yet is asked about by that one’s name: press the letter of its collar, or Space, and the number is that puppy’s. The one in hand is still to be weighed.',
      'Two puppies that look exchanged are asked about too. X exchanges the two weights, Enter says that they are right.',
      'To take up a puppy again that was weighed already, go there with the arrows, type its letter or name and Enter, or click its name or its number. What you type then takes the place of the weight.',
      'Page Up goes a day back, Page Down back to now. A weight of an earlier day is compared with those before and after it.',
      'A weight that cannot be written stays in its row, marked, and is tried again in order. If the program was started again, open the address that it printed last, in the same window or beside it.',
      'Any weight can be corrected, moved to its day, given to another puppy or struck out where you see it: on the puppy’s page, in Growth, on Today. What stood there before stays in the record, struck through.',
      'The order of the puppies can be changed on the page Puppies. Weigh at the same time of day, in the same order, on the same scale.',
    ],
    keys: [
      { keys: ['Enter'], does: 'keep the number, next puppy' },
      { keys: ['Space'], does: 'take the guess' },
      { keys: ['↑', '↓'], does: 'another puppy' },
      {
        keys: ['A'],
        does: 'a collar’s letter: take that puppy in hand, with Enter; when it is asked about, the number is that one’s',
      },
      { keys: ['X'], does: 'exchange two weights, when asked' },
      { keys: ['Alt ↑', 'Alt ↓'], does: 'another place in the order' },
      { keys: ['Page Up'], does: 'a day back' },
      { keys: ['Page Down'], does: 'back to now' },
      { keys: ['Ctrl Z'], does: 'take back the last weight' },
    ],
  },
  {
    id: 'scale',
    title: 'A scale that is connected',
    paragraphs: [
      'On the weigh-in, “Connect the scale” reads a USB scale, or a serial one that sends lines of text. The window or the browser asks once which device it is; from then on it is found by itself, also after it was switched off, as long as the browser remembers it. Firefox and Safari cannot reach scales. A scale that types like a keyboard needs nothing of this.',
      'Put the puppy in hand on the scale. Its last three seconds are drawn beside the number, with the band that counts as steady: two steps of the scale, or one per cent of the weight. Steady for a second, the weight is written as if you had typed it, and the next puppy is in hand. Take the first one off: a puppy is written once, until the scale was empty.',
      'A puppy that does not lie still is not written by itself. Its middle is offered, with how far it moves; Enter takes it. A weight that does not fit is asked about as a typed one is. If it fits another puppy much better, Space gives it to that one.',
      'What you type always goes before the scale. Where a number stands already, the scale only fills in the new one, and Enter writes it. Weights of another day are typed. Under Your house you can have one low tick for each weight that is written.',
      'On Linux a USB scale may need a rule for the device manager (udev) that lets you read it; the scale’s name is found with lsusb.',
    ],
    keys: [
      { keys: ['Enter'], does: 'take the weight that is offered' },
      { keys: ['Space'], does: 'give the weight to the puppy that it fits' },
    ],
  },
  {
    id: 'writing-weights',
    title: 'How weights may be written',
    paragraphs: [
      'A number alone is in the unit of your scale, as written under Your house. Any other unit can be written behind it: 412, 0.412kg, 14.5oz, 1 lb 3, 1lb3.5oz. With pounds and ounces, a number alone is ounces, and 1:3.5 is one pound and three and a half ounces.',
      'A comma is a decimal comma. What cannot be read stays as you typed it, with a sentence that says why.',
    ],
  },
  {
    id: 'levels',
    title: 'Steady, watch, act',
    paragraphs: [
      'Steady: the puppy keeps its place among the littermates, or is catching up.',
      'Watch: it gains less than it should. Check the number, see it suckle, and weigh it again in 6 to 12 hours. The extra weight counts, and settles it sooner than waiting for the morning.',
      'Act: it is falling behind in earnest, or losing. Keep it warm first, and never feed a cold puppy. Check that it sucks and is not dried out. Call your vet.',
      'The reason always stands beside the word. A level says what the weights show, and nothing else: a puppy that is limp, cold, crying or breathing badly needs your vet, whatever the program says.',
      'When all of them gain too little, the litter is marked and not each puppy: look at the dam first, her food, water, teats and temperature.',
    ],
  },
  {
    id: 'standing',
    title: 'Standing and drift',
    paragraphs: [
      'Standing is where a puppy is against the middle of its littermates: “9 % under the middle”. Drift is how its standing moved in the last days. Drift is what matters: a small puppy that keeps its place is steady.',
      'On the drift line every puppy is its collar, at its standing. The tail shows where it stood two days ago. Those at watch or act hang under the line.',
      'On a puppy’s page stand what its birth weight means in its breed, where figures were published, when it doubled and tripled it, and what was seen at which weighing. A doubling that comes late is a note, never an alarm.',
      'A newborn that is very light for its breed is at watch from birth for two days. Where limits of the breed were published, they hold. For any other breed, write its usual birth weight on the page Puppies; under two thirds of it is very light. Two thirds is reckoned from the ten breeds that have limits, and nobody has tested it on yours. Left empty, the mean of a small study serves for six breeds; for the rest birth weight raises no level.',
      'Beside your own line: once three earlier litters of the same breed, with twelve puppies, were weighed from birth, a puppy’s page tells where it is among them for its birth weight and age, and how it gained in the last days beside those that stood where it did. The middle of the line is a thin line in the chart and a column of the table. Every litter counts alike. It is a note, goes into no level, and is no reason to feed more.',
      'The forecast is a range, not a goal. It starts at the puppy’s own weight, and every new weight starts it afresh. Slow growth is safe growth, above all in large breeds.',
    ],
  },
  {
    id: 'numbers',
    title: 'Where a number comes from',
    paragraphs: [
      'A figure with a dotted line under it can explain itself. Point at it, or reach it with Tab: one line stands in the foot. Enter opens the details: the whole sum and its sources; Esc closes them.',
      'A source says how it is known: seen in the original, second-hand, from memory, computed, or common practice without a source.',
    ],
  },
  {
    id: 'house-rules',
    title: 'House rules',
    paragraphs: [
      'The program begins with 5.5 % of body weight to five months, 3.5 % at six and 2 % from twelve, and never under 85 % of the published energy estimate; three meals, a late fourth to twelve weeks for dogs under 10 kg grown, two from five months (from six for those); bone as the mix has it.',
      'How much, how often and for how long are your rules. They begin as common practice. Beside each stands what is published or official, so that you see where they differ. Nothing is changed behind your back.',
      'A change holds from the day you make it. Older versions are kept, and a plan that was handed over keeps the rules it was made with.',
      'A litter can have rules of its own: choose it at the top of the page. Until you change one for it, it goes by the house. Where a ration parts from the published numbers, the page of the puppy and Today say so, and one action mends it, for that litter alone.',
    ],
  },
  {
    id: 'weaning',
    title: 'Weaning',
    paragraphs: [
      'Choose the day of the first bowl, between three and four weeks. The steps that follow are a planning curve; change them as you like. Each step says which part of the food comes from the bowl and how it is made; the rest is the dam’s milk.',
      'A puppy whose gain stalls for more than two days stays on its step until its gain is back, and the page says so. A loose stool rests the steps for two days. Pause them yourself at any time.',
      'Tomorrow’s table and the prep sheet are rounded bowl by bowl, so puppies, bowls, meals and the day agree to the gram. What was left or refused leads to a suggestion: offer it again, weigh out a tenth less, leave a meal out. Nothing changes unless you take it.',
      'The dam’s food follows her weight, her litter and the steps. Write her down on Litters while she is carrying, and her due days stand there.',
      'For a puppy at act under four weeks, its page shows what two handbooks would give by bottle. Warm first, never feed a cold puppy, call your vet.',
    ],
    keys: [
      { keys: ['C', 'L', 'R'], does: 'with a meal in focus: cleaned up, left some, refused' },
      { keys: ['↑', '↓'], does: 'another meal' },
    ],
  },
  {
    id: 'care',
    title: 'Care',
    paragraphs: [
      'Microchips: scan each chip twice, or type its number twice. A reader that types works as it is; the next puppy without a number is then in hand. A number that another puppy has, a test number and one that no chip can have are not taken.',
      'A dose is arithmetic: copy dose, strength and limits from the label or from your vet’s note, and each puppy’s amount stands beside it, exact and to the marks of the syringe, with what it really gives. It goes by the last weight. A puppy at watch or act, too young or too light by the label, gets none: ask your vet.',
    ],
    keys: [{ keys: ['Enter'], does: 'from the number to the same again, and on to the next puppy' }],
  },
  {
    id: 'foods',
    title: 'Foods and the week of bowls',
    paragraphs: [
      'Write down your food from its pack: as fed, in dry matter, or in 1000 kcal, as the pack has it. Parts over a hundred are stopped; an energy that is not that of the analysis is asked about. What the pack does not say, leave empty: it is shown as not known.',
      'Calcium is a range wherever bone decides, since bone holds more or less of it. The label’s calcium is always better.',
      'A food can be a recipe of others, by weight. A food that you put away is no longer offered, and stays where it is used.',
      'On the page of a weaned puppy, beside the published numbers, try out treats: what they weigh, and what is then left for the meals of today. It is not written down.',
      'The week of bowls says what is in each meal: one food, several with their shares, or raw meaty bones in place of the meal. Beside it stands what the week comes to, for the litter, one puppy or a grown dog. A litter without a week of its own has that of the house.',
    ],
    keys: [
      { keys: ['↑', '↓', '←', '→'], does: 'another bowl' },
      { keys: ['Home', 'End'], does: 'first and last meal of the day; with Ctrl, of the week' },
      { keys: ['Enter'], does: 'opens the bowl; Esc goes back to the week' },
      { keys: ['Delete'], does: 'empties it' },
      { keys: ['Ctrl C', 'Ctrl V'], does: 'copies a bowl, puts it into another' },
    ],
  },
  {
    id: 'plan',
    title: 'The go-home plan',
    paragraphs: [
      'On the page Homes each puppy has its plan: how much and how often, when meals are left off, bones, thawing, hygiene, and what to expect on the scale. It is reckoned from the puppy’s own last weight.',
      'A puppy at “act”, or not weighed for some days, gets no amounts by age: weigh first. A warning asks why before it is printed, and your reason then stands on the first sheet.',
      'What you see before printing is the page that is printed. Hand it over, and it is kept exactly as it was; it can be printed again years later.',
      'Laws on the age of selling, on chips and on records differ from place to place. Check your local rule.',
    ],
  },
  {
    id: 'freezer',
    title: 'The freezer and the thaw list',
    paragraphs: [
      'Put a delivery in: how many packs, what one weighs, Enter. From then on the page Freezer says every day what to take out, for whom, and by when it has to be used. It is worked out backwards from the meals: bowls of the litters by plan, rules and forecast weights, and the dogs you write down there.',
      'Tick a row when the pack goes into the refrigerator: its clock starts then. Today on the page of a litter shows the same rows. Ticked by mistake? Ctrl Z.',
      'Nothing comes out before it is needed, the oldest goes first, and of all plans the one that throws away least is taken. A pack that can be cut half frozen is planned by the portion.',
      'When a meal comes too soon for the refrigerator, the page says so, with the cold-water time. Nothing is planned to thaw on the counter; when it has happened, write it down under “Taken out otherwise”, and the official two hours hold.',
      'A house rule that is longer than the official keeping time is used, and the official time stands beside it: on the list, on the labels, on the paper.',
      'To buy says how many packs by when. Count the freezer now and then: what lacks counts as used, the oldest first.',
    ],
  },
  {
    id: 'undo',
    title: 'Undo',
    paragraphs: [
      'The right end of the foot names the last thing done. Undo, or Ctrl Z outside a field, takes it back, one thing after another, also after a restart. Redo, or Ctrl Y, does it again.',
      'A weight is never deleted. What was corrected or taken back stays in the file and is struck through.',
    ],
  },
  {
    id: 'backups',
    title: 'The file and its backups',
    paragraphs: [
      'Everything is in one file on this computer; Records says where. There is no account and nothing is sent anywhere.',
      'A checked copy is made on every day that something is written, and whenever you ask under Records. Keep a copy somewhere else too: on a stick, or on another computer. Under Records, write the path of the stick and press “Copy there now”.',
      'You can go back to any backup. What was written after it is not lost: it is set aside as a backup of its own. To go on with another computer, copy the file to a stick, start Whelpside there, and go back to the copy on the stick.',
      'When the file is damaged, the window says so before anything else and changes nothing. It names the newest good backup and what is missing in it, and can take what is whole out of the damaged file. The damaged file is kept in any case.',
      'Only your account on this computer can read the file, its backups and the papers. Under Records, what is written about you, your vet or a buyer can be written out alone and erased; older backups hold it until they expire.',
    ],
  },
  {
    id: 'bring-in',
    title: 'Import and export',
    paragraphs: [
      'Under Records, “Import weights” takes a spreadsheet (XLSX), a CSV file or a table that you paste. One row a weight is read, and a grid of days and puppies, either way round. It shows what it understood, and asks where something can be read two ways, such as 03/04. Nothing is written before you press the button, and Undo takes all of it back.',
      'Each row that is refused says why. A weight that is written already is not imported twice. What the weights themselves make doubtful can be left out row by row.',
      'Everything can be exported: the weights as one table, everything as CSV, as a workbook or as JSON with its schema, and the data file itself. The JSON of everything can be brought into a Whelpside where nothing is written yet. Text that a spreadsheet could take for a formula is written with an apostrophe before it, which goes again when the file is brought in.',
      'What is kept of you and your vet can be written as a file of its own. These files are not locked: keep them where only you can read them.',
    ],
  },
  {
    id: 'cautions',
    title: 'Cautions',
    paragraphs: [
      'The program does not diagnose and takes the place of no vet. Doses and treatments are for your vet to say.',
      'Raw meat carries germs that freezing does not kill. Wash hands, bowls and surfaces after it. Children under five, pregnant women, old people and people with weak defences should not handle it (FDA, UK Food Standards Agency, second-hand). The CDC, the AVMA and the WSAVA advise against feeding raw meat.',
      'Thaw in the refrigerator at 4 °C or colder, never on the counter. Where your rule for keeping is longer than the official time, both stand on the paper.',
      'Bones: raw only, watched all the time, large enough for the puppy. The FDA calls bones of any size unsafe (second-hand).',
    ],
  },
  {
    id: 'keyboard',
    title: 'Moving by keyboard',
    paragraphs: [
      'Everything can be reached with Tab. From the page, Esc goes to the margin; there the arrows move and a first letter jumps.',
    ],
    keys: [
      { keys: ['Esc'], does: 'lets the foot down; else from the page to the margin, and back' },
      { keys: ['↑', '↓'], does: 'in the margin: the page before, the next page' },
      { keys: ['T', 'W', 'G'], does: 'in the margin: the first letter of a page; again for the next' },
      { keys: ['Enter'], does: 'opens a page; in a field, saves it' },
      { keys: ['Esc'], does: 'in a field that you changed: puts back what was saved' },
      { keys: ['Alt ↑', 'Alt ↓'], does: 'on Puppies: moves a puppy in the weigh-in' },
      { keys: ['Ctrl Z', 'Ctrl Y'], does: 'undo, redo' },
    ],
  },
];
