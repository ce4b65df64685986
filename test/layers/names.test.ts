/** A test is named after its source, so that who knows one finds the other. Those that are about more say what, here. */
import { existsSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Tests of something that no single source is. */
const ABOUT_MORE: Readonly<Record<string, string>> = {
  'core/calendar/calendar': 'days, clocks and ages together',
  'core/feeding/no-contradictions': 'every pair of findings, over foods, sizes, ages and rules',
  'core/growth/cut': 'the same litter cut short gives the same answers',
  'core/growth/littermate': 'a number that fits a littermate: doubt and outliers together',
  'core/growth/notes': 'the notes of a puppy: birth, milestones, own line',
  'core/growth/parts': 'small parts of the method, against its definition',
  'core/growth/readings': 'readings through outliers, swaps and thinning',
  'core/growth/scale/words': 'what each maker of lines says, through the reader and the words',
  'core/growth/sentences': 'findings of whole litters as they are said',
  'core/growth/strong-start': 'litters that gain from the first day',
  'main/electron/parts': 'the parts of the desktop host against a faked electron',
  'main/electron/preload': 'the built preload, in main/preload',
  'main/node/attacks': 'hostile requests',
  'main/node/held-up': 'a host that is busy, connections opened ahead',
  'main/node/large': 'bodies over the usual size',
  'main/node/parts': 'small parts of the browser host',
  'main/node/printing': 'a paper from the call to the PDF',
  'main/service/tags': 'what each query reads against the tags it carries',
  'main/service/transfer': 'export, import and taking in, there and back',
  'main/service/year': 'a year of use',
  'main/store/house': 'the house among people and settings',
  'renderer/parts/collar': 'collars drawn: band, fabric and words',
  'renderer/parts/labels': 'labels of charts that must not meet',
  'renderer/parts/pictures': 'every drawing says what it shows',
  'renderer/parts/read': 'what a form reads, in parts/form',
  'renderer/records/pasted': 'ten thousand pasted weights through all of the import',
};

const named = (folder: string) =>
  readdirSync(`${ROOT}test/${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.test\.tsx?$/.test(path))
    .map((path) => `${folder}/${path.replaceAll('\\', '/').replace(/\.test\.tsx?$/, '')}`);
/** The English words stand in a folder of their own; their tests beside the other words. */
const sources = (name: string) => [name, name.replace(/^core\/words\//, 'core/words/en/')];
const hasSource = (name: string) => sources(name).some((at) => ['.ts', '.tsx'].some((end) => existsSync(`${ROOT}${at}${end}`)));

it('every test of core, main and renderer is named after its source, or says what it is about', () => {
  const about = ['core', 'main', 'renderer'].flatMap(named).filter((name) => !hasSource(name));
  for (const name of about) console.log(`about more than one source: test/${name}, ${ABOUT_MORE[name] ?? 'not said'}`);
  expect(about.toSorted()).toEqual(Object.keys(ABOUT_MORE).toSorted());
});
