/** Back-test of the forecast on the published weights of one dog: what was said at each weight, and what it came to weigh. */
import { logistic } from '../../../core/growth/curves.ts';
import { forecastWeight } from '../../../core/growth/forecast.ts';
import { type CurveShape, fitCurve } from '../../../core/growth/own-line/fit-curve.ts';
import { seriesOf } from '../../../core/growth/series.ts';
import { CLASS_ADULT_KG } from '../../../core/reference/growth/adult-weight.ts';
import { GROWTH_CURVES } from '../../../core/reference/growth/curves.ts';
import { TYHURST, tyhurst } from '../../fixtures/tyhurst-litter.ts';
import { WILSON } from '../../fixtures/wilson-dog.ts';

const kg = (x: number | null | undefined) => (x == null ? '-' : x.toFixed(1));
const error = (said: number, is: number) => `${said < is ? '-' : '+'}${Math.abs(100 * (said / is - 1)).toFixed(0)} %`;

function row(cells: readonly string[]): void {
  console.log(`  ${cells.map((c) => c.padStart(11)).join('')}`);
}

/** Prints two tables: the grown weight told from each weight, and the later weights told from it with the true grown weight given. */
export function printForecastBackTest(): void {
  const weights = WILSON.weights.map(({ day, kg: weight }) => ({ age: day, weight }));
  const adult = WILSON.adultKg;
  console.log(`\n  forecast, one dog of ${adult} kg grown (demodelr, data set wilson, all nineteen weights; large)`);
  console.log(
    '  grown kg from one weight by the class curve; by curves fitted to the weights so far, which the program does not show',
  );
  row(['day', 'kg', 'class', 'true', 'error', 'logistic', 'Gompertz']);
  weights.forEach(({ age, weight }, i) => {
    const told = weight / logistic(age / 7, GROWTH_CURVES.large);
    const fitted = (shape: CurveShape) => kg(fitCurve(weights.slice(0, i + 1), shape)?.end);
    row([String(age), kg(weight), kg(told), kg(adult), error(told, adult), fitted('logistic'), fitted('gompertz')]);
  });
  console.log('  later kg as the program shows them from each weight, when the grown weight was written down');
  row(['from day', 'to day', 'forecast', 'true', 'error', 'band', 'inside']);
  let [inside, all] = [0, 0];
  weights.forEach((from, i) => {
    const forecast = forecastWeight({
      adultKg: adult,
      sizeClass: 'large',
      anchorAgeDays: from.age,
      anchorGrams: from.weight * 1000,
    });
    for (const to of weights.slice(i + 1)) {
      const band = forecast.at(to.age);
      if (band === null) continue;
      const hit = band.low <= to.weight * 1000 && to.weight * 1000 <= band.high;
      all += 1;
      inside += hit ? 1 : 0;
      const width = `±${(100 * (band.high / band.mid - 1)).toFixed(0)} %`;
      row([
        String(from.age),
        String(to.age),
        kg(band.mid / 1000),
        kg(to.weight),
        error(band.mid, to.weight * 1000),
        width,
        hit ? 'yes' : 'no',
      ]);
    }
  });
  console.log(`  ${inside} of ${all} later weights inside the band`);
  printRealForecast();
}

/** The real litter, of which only the class is known, without the day on which its scale was at fault. */
function printRealForecast(): void {
  const hits = { 'first fortnight, up to a fortnight ahead': [] as boolean[], 'a month ahead': [] as boolean[] };
  for (const name of TYHURST.names) {
    const own = seriesOf(tyhurst(), name).filter((p) => Math.floor(p.ageDays) !== TYHURST.faultDay);
    for (const from of own) {
      const forecast = forecastWeight({
        adultKg: CLASS_ADULT_KG.large,
        adultFrom: 'class',
        sizeClass: 'large',
        anchorAgeDays: from.ageDays,
        anchorGrams: from.grams,
      });
      for (const to of own) {
        const ahead = to.ageDays - from.ageDays;
        const band = ahead <= 0 ? null : forecast.at(to.ageDays);
        if (band === null) continue;
        const hit = band.low <= to.grams && to.grams <= band.high;
        if (from.ageDays <= 14 && ahead <= 14) hits['first fortnight, up to a fortnight ahead'].push(hit);
        if (ahead >= 27 && ahead <= 33) hits['a month ahead'].push(hit);
      }
    }
  }
  console.log('  a real litter in ounces (codesamplerr, weights-2019), which doubled only on days 14 to 21');
  for (const [what, list] of Object.entries(hits))
    console.log(`  ${what}: ${list.filter(Boolean).length} of ${list.length} weights inside the band`);
}
