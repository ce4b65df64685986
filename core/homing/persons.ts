/** Who stands on a plan that was handed over: the breeder in its contact, vets in its box. */
import type { PlanDocument } from './document.ts';

/** The plan without what is written of a person: those lines are left to be written on. The plan itself when nothing of it stands there. */
export function withoutPerson(plan: PlanDocument, written: ReadonlySet<string>): PlanDocument {
  const isHers = (text: string) => text.trim() !== '' && written.has(text.trim());
  const kept = (text: string) => (isHers(text) ? '' : text);
  const { lead, name, address, phone, email } = plan.contact;
  const lines = plan.vet.lines.map((line) => ({ ...line, name: kept(line.name), phone: kept(line.phone) }));
  const isNamed = [name, address, phone, email, ...plan.vet.lines.flatMap((line) => [line.name, line.phone])].some(isHers);
  if (!isNamed) return plan;
  const contact = { lead, name: kept(name), address: kept(address), phone: kept(phone), email: kept(email) };
  return { ...plan, contact, vet: { ...plan.vet, lines } };
}
