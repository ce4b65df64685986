/** Who stands on a plan that was handed over: the breeder in its contact, vets in its box. */
import type { AnyPlan } from './document.ts';

/** The plan without what is written of a person: those lines are left to be written on. The plan itself when nothing of it stands there. */
export function withoutPerson(plan: AnyPlan, written: ReadonlySet<string>): AnyPlan {
  const isHers = (text: string) => text.trim() !== '' && written.has(text.trim());
  const kept = (text: string) => (isHers(text) ? '' : text);
  const { name, address, phone, email } = plan.contact;
  const isNamed = [name, address, phone, email, ...plan.vet.lines.flatMap((line) => [line.name, line.phone])].some(isHers);
  if (!isNamed) return plan;
  const contact = { name: kept(name), address: kept(address), phone: kept(phone), email: kept(email) };
  const lines = plan.vet.lines.map((line) => ({ ...line, name: kept(line.name), phone: kept(line.phone) }));
  // The two forms differ in more than what is changed here.
  return plan.version === 3
    ? { ...plan, contact: { ...plan.contact, ...contact }, vet: { ...plan.vet, lines } }
    : { ...plan, contact: { ...plan.contact, ...contact }, vet: { ...plan.vet, lines } };
}
