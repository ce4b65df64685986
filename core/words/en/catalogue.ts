/** Everything that is said in English, by subject. */

import { foodFigure, foodText, massFigure, massText, weightText } from './amounts.ts';
import { appWords, failureWords, keyWords } from './app.ts';
import {
  CHIP_SOURCE,
  careWords,
  chipFault,
  chipIssuer,
  chipText,
  doseAmount,
  doseRefusal,
  doseRemark,
  doseWords,
} from './care.ts';
import {
  ageInWords,
  dateInWords,
  dateShort,
  dateSpan,
  dayOfWeek,
  fullDate,
  longDate,
  shortDate,
  shortDay,
  shortMonth,
  weekdayName,
  when,
} from './dates.ts';
import { damWords } from './dogs.ts';
import { choiceWords, houseWords, reckonedWords, rulesWords, ruleWords, unitShort, unitWords } from './feeding.ts';
import { explainedLine } from './feeding-explain.ts';
import { bandSource, findingWords, OFFICIAL_PLACES, treatWords } from './feeding-findings.ts';
import { capital, fixed, grouped, kcalText, numberWord, percentText, plain, rangeText } from './figures.ts';
import { foodsWords, foodWords } from './food.ts';
import { weekWords } from './food-week.ts';
import { formWords } from './form.ts';
import { freezerPaperWords, freezerWords, timeNear } from './freezer.ts';
import { answerWords, growthWords, mendWords, signed, span, standingFigure, standingWords } from './growth.ts';
import { growthFindingWords } from './growth-findings.ts';
import { helpParts, helpWords } from './help.ts';
import { homesWords } from './homing.ts';
import { exportWords, importWords, unitChoice } from './import.ts';
import { doneSentence } from './journal.ts';
import { countsText, keepingWords, rescueWords } from './keeping.ts';
import { beginWords, litterName, littersWords, puppiesWords, sexWords, sizeWords, stateWords } from './litter.ts';
import { massMistake, massWords } from './mass.ts';
import { mealWords } from './meals.ts';
import { ownLineWords } from './own-line.ts';
import { chartWords, collarTextWords, driftWords, ladderWords, levelWords, tallyWords } from './parts.ts';
import { peopleWords } from './people.ts';
import { planWords } from './plan.ts';
import { planNoteWords } from './plan-notes.ts';
import { paperWords, printWords } from './print.ts';
import { BIRTH_SOURCE, birthHow, birthWords, milestoneWords, puppyNoteWords } from './puppy-notes.ts';
import { recordsWords } from './records.ts';
import { scaleWords } from './scale.ts';
import { prepWords, topUpWords, weaningWords } from './weaning.ts';

export const ENGLISH = {
  app: appWords,
  failure: failureWords,
  keys: keyWords,
  ageInWords,
  dateInWords,
  dateShort,
  dateSpan,
  fullDate,
  longDate,
  weekdayName,
  massFigure,
  massText,
  weightText,
  foodFigure,
  foodText,
  capital,
  fixed,
  grouped,
  numberWord,
  kcalText,
  percentText,
  plain,
  rangeText,
  shortDate,
  shortDay,
  shortMonth,
  dayOfWeek,
  when,
  unit: unitWords,
  unitShort,
  meal: mealWords,
  rule: ruleWords,
  choice: choiceWords,
  rules: rulesWords,
  reckoned: reckonedWords,
  house: houseWords,
  foods: foodsWords,
  food: foodWords,
  finding: findingWords,
  explainedLine: explainedLine,
  bandSource,
  officialPlace: OFFICIAL_PLACES,
  treat: treatWords,
  week: weekWords,
  form: formWords,
  timeNear,
  freezer: freezerWords,
  freezerPaper: freezerPaperWords,
  standing: standingWords,
  standingFigure,
  signed,
  span,
  growth: growthWords,
  answer: answerWords,
  mend: mendWords,
  growthFinding: growthFindingWords,
  ownLine: ownLineWords,
  help: helpWords,
  helpParts,
  homes: homesWords,
  plan: planWords,
  people: peopleWords,
  planNote: planNoteWords,
  import: importWords,
  unitChoice,
  export: exportWords,
  countsText,
  keeping: keepingWords,
  rescue: rescueWords,
  sex: sexWords,
  state: stateWords,
  size: sizeWords,
  litterName,
  litters: littersWords,
  begin: beginWords,
  puppies: puppiesWords,
  mass: massWords,
  massMistake,
  collarText: collarTextWords,
  level: levelWords,
  tally: tallyWords,
  drift: driftWords,
  ladder: ladderWords,
  chart: chartWords,
  paper: paperWords,
  print: printWords,
  BIRTH_SOURCE,
  birth: birthWords,
  birthHow,
  milestone: milestoneWords,
  puppyNote: puppyNoteWords,
  doneSentence,
  records: recordsWords,
  scale: scaleWords,
  weaning: weaningWords,
  prep: prepWords,
  care: careWords,
  CHIP_SOURCE,
  chipFault,
  chipIssuer,
  chipText,
  dose: doseWords,
  doseAmount,
  doseRefusal,
  doseRemark,
  dam: damWords,
  topUp: topUpWords,
} as const;
