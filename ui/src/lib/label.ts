// The label's questions in groups, and which group a field lies in, so that a refused label leads there.
import type { AnalysisInput } from './generated/AnalysisInput';
import type { ProductInput } from './generated/ProductInput';

/** Groups in the order they are asked. */
export const GROUPS = [
  'name',
  'contents',
  'use',
  'dose',
  'water',
  'again',
  'when',
  'after',
  'mowing',
  'margins',
  'mixing',
  'protective',
  'first-aid',
  'signed',
] as const;

export type LabelGroup = (typeof GROUPS)[number];

/** Fields that hold whose limit a limit is. */
export type TagField = Extract<keyof ProductInput, `${string}_tag`>;

/** The nutrients of an analysis, each with the field that says how it is given. */
export const NUTRIENTS: readonly {
  name: Extract<keyof AnalysisInput, 'n' | 'p' | 'k' | 'fe'>;
  as: Extract<keyof AnalysisInput, `${string}_as`> | null;
}[] = [
  { name: 'n', as: null },
  { name: 'p', as: 'p_as' },
  { name: 'k', as: 'k_as' },
  { name: 'fe', as: null },
];

const FIELDS: Record<LabelGroup, readonly string[]> = {
  name: ['name', 'legal_class', 'form', 'authorisation_number', 'authorised_until', 'use_up_by'],
  contents: ['density', 'actives', 'analysis', 'kills_grass', 'contains_iron'],
  use: ['purposes', 'situations', 'hand_held'],
  dose: ['dose', 'dose_seen', 'highest_dose', 'highest_dose_tag', 'least_dose', 'least_dose_tag', 'targets'],
  water: ['water_min', 'water_max', 'water_tag', 'highest_concentration', 'concentration_tag'],
  again: [
    'least_days',
    'least_days_tag',
    'most_per_year',
    'most_per_year_tag',
    'most_amount',
    'most_amount_tag',
    'year',
  ],
  when: [
    'months',
    'months_tag',
    'temp_min',
    'temp_max',
    'temp_tag',
    'young_turf',
    'young_turf_tag',
    'no_drought',
    'drought_tag',
  ],
  after: ['keep_off', 'keep_off_tag', 'keep_off_words', 'rain', 'rain_hours', 'rain_tag'],
  mowing: ['mow_before', 'mow_after', 'mow_tag', 'mowing_words'],
  margins: ['water_margin', 'water_margin_boom', 'water_margin_tag'],
  mixing: ['formulation', 'partners', 'partners_words', 'dissolves', 'own_solubility'],
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
