/** One question, one assembly: what a rule needs is put together in its own file of core, nowhere else. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const ASSEMBLIES: Readonly<Record<string, readonly string[]>> = {
  GrowthInput: ['core/growth/input.ts'],
  WeaningInput: ['core/weaning/weaning-input.ts'],
  RationInput: ['core/feeding/ration-input.ts'],
  FindingsInput: ['core/feeding/ration-input.ts'],
  LadderInput: ['core/feeding/ration-input.ts'],
  DamDayInput: ['core/feeding/dam-day.ts'],
};
/** Rules that take such an input; the invented puppy of House rules is the one that has no facts. */
const RULES = /\b(assessLitter|doubtAbout|weaningDays?|rationOn|explainRation|findings|mealLadder|damDay)\(\{(?!\s*\.\.\.)/;
const BY_HAND = ['renderer/feeding/RulesEffect.tsx'];

/** Where an input is written out as an object, by file. */
function handBuilt(path: string, source: string): string[] {
  const made = Object.entries(ASSEMBLIES).flatMap(([type, files]) =>
    !files.includes(path) &&
    new RegExp(
      `(: ${type}( \\| null)? = \\{|=> \\{?\\s*return \\{[^}]*\\} (as|satisfies) ${type}\\b|useMemo<${type}[^>]*>\\(\\(\\) => \\(?\\{\\s*\\w+[:,])`,
    ).test(source)
      ? [`${path} builds a ${type}`]
      : [],
  );
  const called = RULES.exec(source)?.[1];
  return called === undefined || BY_HAND.includes(path) ? made : [...made, `${path} hands ${called} facts of its own`];
}

it('sees an input that is built by hand', () => {
  expect(handBuilt('main/service/x.ts', 'const input: WeaningInput = {\n plan,')).toHaveLength(1);
  expect(handBuilt('renderer/x.ts', 'const need = damDay({\n    fields: dam.fields,')).toHaveLength(1);
  expect(handBuilt('renderer/x.ts', 'assessLitter({ ...input, readings })')).toEqual([]);
});

it('finds none outside the assemblies', () => {
  const files = ['core', 'main', 'renderer'].flatMap((floor) => globSync(`${floor}/**/*.{ts,tsx}`, { cwd: root }));
  expect(files.length).toBeGreaterThan(300);
  expect(files.flatMap((path) => handBuilt(path.replaceAll('\\', '/'), readFileSync(join(root, path), 'utf8')))).toEqual([]);
});
