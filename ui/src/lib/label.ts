// The label's questions in groups, and which group a field lies in, so that a refused label leads there.

/** Groups in the order they are asked. */
export const GROUPS = ['name', 'dose', 'water', 'again', 'after', 'protective', 'first-aid', 'signed'] as const;

export type LabelGroup = (typeof GROUPS)[number];

const FIELDS: Record<LabelGroup, readonly string[]> = {
  name: ['name', 'legal_class', 'purposes', 'form', 'density', 'authorisation_number', 'kills_grass', 'contains_iron'],
  dose: ['dose', 'highest_dose', 'highest_dose_tag'],
  water: ['water_min', 'water_max', 'water_tag', 'highest_concentration', 'water_margin'],
  again: ['least_days', 'least_days_tag', 'most_per_year', 'most_per_year_tag', 'year'],
  after: ['keep_off', 'keep_off_words', 'rain', 'rain_hours', 'rain_tag', 'mowing_words'],
  protective: ['protective_mixing', 'protective_spraying', 'protective_washing'],
  'first-aid': ['splash_words', 'spill_words', 'swallowed_words', 'hazard_words'],
  signed: ['label_version', 'entered_by', 'entered_on'],
};

/** The place of the group that asks for this field; an unknown field belongs to the first. */
export function groupOf(field: string): number {
  const [name = ''] = field.split('.');
  const idx = GROUPS.findIndex((group) => FIELDS[group].includes(name));
  return idx === -1 ? 0 : idx;
}
