/** Sentences of the scale. */

import type { ScaleFault, ScaleTrouble, ScaleWay } from '../../growth/scale/value.ts';

const FAULTS: Record<ScaleFault, string> = {
  fault: 'The scale reports a fault of its own. Switch it off and on.',
  'under-zero': 'The scale shows less than nothing. Take everything off and set it to zero.',
  'over-limit': 'That is more than the scale can weigh.',
  calibrate: 'The scale wants to be calibrated; its own booklet says how.',
  're-zero': 'The scale wants to be set to zero. Take everything off first.',
  unit: 'The scale sends a unit that cannot be told. Set it to grams, kilograms, ounces or pounds.',
  'no-unit': 'The scale sends numbers without a unit. Say above which one it is.',
  garbled: 'What the scale sends cannot be read. Is its speed right?',
};

const TROUBLES: Record<ScaleTrouble, string> = {
  'no-way':
    'This browser cannot reach a scale. The program’s own window can, and so can browsers of the Chromium family. A scale that types like a keyboard works everywhere.',
  'none-chosen': 'No scale was chosen. Is it plugged in and switched on?',
  'not-a-scale': 'That is not a scale that sends its weight.',
  'cannot-open': 'The scale cannot be opened. Another program may be using it; Help says what Linux needs.',
};

const WAYS: Record<ScaleWay, string> = { usb: 'USB scale', serial: 'Serial scale' };

export const scaleWords = {
  connect: 'Connect the scale',
  connecting: 'Looking for the scale …',
  choose: 'How is it connected?',
  ways: WAYS,
  baud: 'speed of a serial scale',
  cancel: 'not now',
  on: (name: string, way: ScaleWay) => `${name === '' ? WAYS[way] : name} connected.`,
  otherTime: 'It writes only the weights of now.',
  disconnect: 'disconnect',
  lost: 'The scale is gone. Type the weights; what is written is kept.',
  again: 'Connect it again',
  unit: 'Its numbers come without a unit. They are in',
  unitUnknown: 'say which',
  troubles: TROUBLES,
  faults: FAULTS,

  ready: 'On the scale: nothing yet.',
  moving: 'Weighing …',
  takeOff: (name: string) => (name === '' ? 'Take the puppy off the scale.' : `Take ${name} off the scale.`),
  offer: (mass: string, spread: string) => `Moving: about ${mass}, give or take ${spread}.`,
  take: (mass: string) => `take ${mass}`,
  fits: (name: string, expected: string, inHand: string, inHandExpected: string) =>
    `More like ${name}: about ${expected} was expected there, for ${inHand} ${inHandExpected}.`,
  give: (name: string, mass: string) => `${name} ${mass}`,
  isInHand: (name: string) => `it is ${name}`,
  filled: 'From the scale. Enter writes it.',
} as const;
