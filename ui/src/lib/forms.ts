// Empty forms, and the words a form offers. The codes are those of the core's forms; each is also a message of the
// catalogue, under the prefix of its question.
import type { CalibrationInput } from './generated/CalibrationInput';
import type { CatchInput } from './generated/CatchInput';
import type { CleaningInput } from './generated/CleaningInput';
import type { LimitsInput } from './generated/LimitsInput';
import type { OperatorInput } from './generated/OperatorInput';
import type { WalkInput } from './generated/WalkInput';
import type { ContainerInput } from './generated/ContainerInput';
import type { StockCountInput } from './generated/StockCountInput';
import type { ClientInput } from './generated/ClientInput';
import type { KitInput } from './generated/KitInput';
import type { LawnInput } from './generated/LawnInput';
import type { PartInput } from './generated/PartInput';
import type { ProductInput } from './generated/ProductInput';
import type { ShapeKind } from './generated/ShapeKind';
import type { Typed } from './generated/Typed';
import { word } from './words';

/** A figure not typed yet. */
export const figure = (unit: string): Typed => ({ text: '', unit });

/** Options of a question: each code with its word. */
export const options = (prefix: string, codes: readonly string[]): { value: string; label: string }[] =>
  codes.map((value) => ({ value, label: word(`${prefix}-${value}`) }));

export const SHAPES: readonly ShapeKind[] = ['rectangle', 'triangle', 'circle', 'part_circle'];
export const TAKEN_OUT = ['bed', 'pond', 'tree_ring', 'path', 'other'] as const;
export const BESIDE = [
  'unknown',
  'nothing',
  'hedge',
  'open_water',
  'neighbour',
  'food_plants',
  'paving',
  'wall',
  'drain',
] as const;
export const LENGTHS = ['m', 'ft', 'yd'];
/** Lengths of a lawn that is paced: how many paces comes first, and metres may still be typed. */
export const PACED_LENGTHS = ['steps', ...LENGTHS];

export const WAYS = ['shape', 'braces', 'offsets', 'walked', 'corners'] as const;
export const INSTRUMENTS = ['tape', 'wheel', 'paces'] as const;
export const UPHILL = ['away', 'right', 'front', 'left'] as const;

export const emptyPart = (takenOut: string | null): PartInput => ({
  way: 'shape',
  shape: 'rectangle',
  taken_out: takenOut,
  width: figure('m'),
  length: figure('m'),
  a: figure('m'),
  b: figure('m'),
  c: figure('m'),
  diameter: figure('m'),
  radius: figure('m'),
  angle: figure('deg'),
  at_x: figure('m'),
  at_y: figure('m'),
  braces: { n_corners: 0, lines: [] },
  offsets: [],
  walked: { rounds: [], from: '' },
  corners: [],
  corners_from: '',
  corners_sd_m2: null,
});

export const emptyLawn = (): LawnInput => ({
  client_id: null,
  name: '',
  parts: [emptyPart(null)],
  sides: [],
  doubt: figure('percent'),
  instrument: '',
  pace_length: figure('m'),
  slope: { by: '', gradient: figure('percent'), ground: figure('m'), rise: figure('m'), uphill: '' },
  origin: null,
  away_bearing: figure('deg'),
  entry: null,
  tap: null,
});

export const emptyClient = (): ClientInput => ({ name: '', address: '', phone: '' });

export const DOSES = ['mL/100m2', 'mL/m2', 'L/ha', 'g/100m2', 'g/m2', 'kg/ha'];
export const WATERS = ['mL/m2', 'L/ha', 'L/100m2'];

/** Formulations that a label may name, by the two letters of the international coding system. */
export const FORMULATIONS = [
  'WP',
  'WG',
  'WT',
  'SP',
  'SG',
  'ST',
  'SC',
  'CS',
  'SE',
  'OD',
  'EC',
  'EW',
  'ME',
  'SL',
  'GR',
] as const;

export const emptyProduct = (): ProductInput => ({
  name: '',
  legal_class: '',
  purposes: [],
  form: '',
  density: figure('kg/L'),
  dose: figure('mL/100m2'),
  highest_dose: figure('mL/100m2'),
  highest_dose_tag: 'statutory',
  water_min: figure('mL/m2'),
  water_max: figure('mL/m2'),
  water_tag: 'statutory',
  highest_concentration: figure('mL/L'),
  least_days: figure('day'),
  least_days_tag: 'statutory',
  most_per_year: figure('times'),
  most_per_year_tag: 'statutory',
  year: 'calendar',
  keep_off: figure('hour'),
  keep_off_words: '',
  rain: '',
  rain_hours: figure('hour'),
  rain_tag: 'advisory',
  mowing_words: '',
  protective_mixing: [],
  protective_spraying: [],
  protective_washing: [],
  water_margin: figure('m'),
  authorisation_number: '',
  kills_grass: false,
  contains_iron: false,
  splash_words: '',
  spill_words: '',
  swallowed_words: '',
  hazard_words: '',
  situations: [],
  hand_held: '',
  actives: [],
  formulation: '',
  targets: [],
  least_dose: figure('mL/100m2'),
  least_dose_tag: 'statutory',
  most_amount: figure('mL/100m2'),
  most_amount_tag: 'statutory',
  months: [],
  months_tag: 'statutory',
  temp_min: figure('degC'),
  temp_max: figure('degC'),
  temp_tag: 'advisory',
  mow_before: figure('day'),
  mow_after: figure('day'),
  mow_tag: 'advisory',
  young_turf: figure('month'),
  young_turf_tag: 'advisory',
  no_drought: false,
  drought_tag: 'advisory',
  water_margin_boom: figure('m'),
  water_margin_tag: 'statutory',
  keep_off_tag: 'statutory',
  concentration_tag: 'statutory',
  partners: '',
  partners_words: '',
  authorised_until: '',
  use_up_by: '',
  analysis: {
    basis: '',
    n: figure('percent'),
    p: figure('percent'),
    k: figure('percent'),
    fe: figure('percent'),
    p_as: '',
    k_as: '',
  },
  dissolves: '',
  own_solubility: [],
  sources: {},
  dose_seen: '',
  label_version: '',
  entered_by: '',
  entered_on: '',
});

export const emptyKit = (): KitInput => ({
  name: '',
  tank: figure('L'),
  empty_weight: figure('kg'),
  dead_volume: figure('L'),
  nozzle: '',
  swath: figure('m'),
  jug_step: figure('mL'),
  scales_step: figure('g'),
  last_in: '',
  cleaned: false,
  reach: figure('m'),
  nozzle_by: '',
  nozzle_size: '',
  rated_flow: figure('L/min'),
  rated_pressure: figure('bar'),
  fan_angle: figure('deg'),
  pattern: '',
  height: figure('cm'),
  pressure: figure('bar'),
  valve: '',
  swath_by: '',
  paving: [],
  dead_by: '',
  dead_drained: [],
  checked_on: '',
  last_product: '',
});

/** Sizes of nozzles and the colours that ISO 10625 gives them. */
export const NOZZLE_SIZES = [
  { size: '01', colour: 'orange' },
  { size: '015', colour: 'green' },
  { size: '02', colour: 'yellow' },
  { size: '025', colour: 'lilac' },
  { size: '03', colour: 'blue' },
  { size: '04', colour: 'red' },
  { size: '05', colour: 'brown' },
  { size: '06', colour: 'grey' },
  { size: '08', colour: 'white' },
] as const;

export const VOLUMES = ['mL', 'L', 'fl_oz_us'];
export const PRESSURES = ['bar', 'kPa', 'psi'];

/** A test asks for three of each; more may be added. */
export const emptyCatch = (): CatchInput => ({ volume: figure('mL'), time: figure('s') });
export const emptyWalk = (): WalkInput => ({ length: figure('m'), time: figure('s'), steps: figure('steps') });

export const emptyCleaning = (today: string, by: string): CleaningInput => ({
  by,
  on: today,
  agent: false,
  n_rinses: figure('times'),
  how_words: '',
});

export const emptyLimits = (): LimitsInput => ({
  profile: '',
  wind_calm: figure('km/h'),
  wind_most: figure('km/h'),
  temp_low: figure('degC'),
  temp_high: figure('degC'),
  keep_back: figure('m'),
  reminder: figure('min'),
});

export const emptyOperator = (): OperatorInput => ({
  name: '',
  certificate: '',
  firm: '',
  emergency_contacts: '',
  limits: emptyLimits(),
});

export const emptyCalibration = (today: string): CalibrationInput => ({
  jug_volume: figure('mL'),
  jug_time: figure('s'),
  walk_length: figure('m'),
  walk_time: figure('s'),
  steps: figure('steps'),
  made_on: today,
  more_catches: [emptyCatch(), emptyCatch()],
  more_walks: [emptyWalk(), emptyWalk()],
  is_loaded: false,
  pressure: figure('bar'),
  plot_area: figure('m2'),
  plot_caught: figure('mL'),
});

export const emptyContainer = (): ContainerInput => ({
  product_id: '',
  batch: '',
  size: figure('L'),
  opened_on: '',
  use_up_by: '',
  note: '',
});

export const emptyCount = (today: string, by: string, unit: string): StockCountInput => ({
  left: figure(unit),
  on: today,
  by,
  note: '',
});

/** The local day, `YYYY-MM-DD`. */
export function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
